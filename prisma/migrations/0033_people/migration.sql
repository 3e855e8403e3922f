-- An outside contractor sees one project until a day; a role may leave something out and may end.
ALTER TYPE "Role" ADD VALUE 'contractor';

ALTER TABLE "Grant" ADD COLUMN "endsOn" DATE,
    ADD COLUMN "projectId" UUID,
    ADD COLUMN "without" TEXT[] DEFAULT ARRAY[]::TEXT[];
CREATE INDEX "Grant_projectId_idx" ON "Grant"("projectId");
ALTER TABLE "Grant" ADD CONSTRAINT "Grant_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
-- As text, because a new value of a type cannot be used in the transaction that adds it.
ALTER TABLE "Grant" ADD CONSTRAINT "Grant_contractor" CHECK (
    CASE WHEN "role"::text = 'contractor'
        THEN "projectId" IS NOT NULL AND "siteId" IS NULL AND "endsOn" IS NOT NULL
        ELSE "projectId" IS NULL END);

CREATE TABLE "AccountInvitation" (
    "id" UUID NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "grants" JSONB NOT NULL,
    "invitedBy" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMPTZ(6) NOT NULL,
    "usedAt" TIMESTAMPTZ(6),
    "withdrawnAt" TIMESTAMPTZ(6),
    "mailedAt" TIMESTAMPTZ(6),

    CONSTRAINT "AccountInvitation_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "AccountInvitation_tokenHash_key" ON "AccountInvitation"("tokenHash");
CREATE INDEX "AccountInvitation_email_idx" ON "AccountInvitation"("email");
