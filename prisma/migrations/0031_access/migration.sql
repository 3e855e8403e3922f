-- A second factor beside the password.
ALTER TABLE "User" ADD COLUMN "twoFactorEnabled" BOOLEAN DEFAULT false;

CREATE TABLE "TwoFactor" (
    "id" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "secret" TEXT NOT NULL,
    "backupCodes" TEXT NOT NULL,
    "verified" BOOLEAN NOT NULL DEFAULT true,
    "failedVerificationCount" INTEGER NOT NULL DEFAULT 0,
    "lockedUntil" TIMESTAMPTZ(6),

    CONSTRAINT "TwoFactor_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "TwoFactor_userId_key" ON "TwoFactor"("userId");
ALTER TABLE "TwoFactor" ADD CONSTRAINT "TwoFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Wrong passwords by address, so that guessing from many places is slowed down too.
CREATE TABLE "WrongPassword" (
    "addressHash" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "lastAt" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "WrongPassword_pkey" PRIMARY KEY ("addressHash")
);
