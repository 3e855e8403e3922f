-- Somebody who has an account gets a new password by a one-time link, and puts off a second factor that is lost.
ALTER TABLE "AccountInvitation" ADD COLUMN "userId" TEXT,
    ADD COLUMN "dropsFactor" BOOLEAN NOT NULL DEFAULT false;
CREATE INDEX "AccountInvitation_userId_idx" ON "AccountInvitation"("userId");
ALTER TABLE "AccountInvitation" ADD CONSTRAINT "AccountInvitation_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "AccountInvitation" ADD CONSTRAINT "AccountInvitation_dropsFactor" CHECK ("userId" IS NOT NULL OR NOT "dropsFactor");
