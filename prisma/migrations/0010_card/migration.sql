-- What a breakdown at night needs: the copies kept of a controller, and whom to call.

CREATE TYPE "BackupKind" AS ENUM ('program', 'parameters', 'operator_panel');

CREATE TABLE "Backup" (
    "id" UUID NOT NULL,
    "controllerId" UUID NOT NULL,
    "kind" "BackupKind" NOT NULL,
    "takenOn" DATE NOT NULL,
    "keptAt" TEXT NOT NULL,
    "verifiedOn" DATE,
    "sourceAvailable" BOOLEAN,
    CONSTRAINT "Backup_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "Backup_verified_after" CHECK ("verifiedOn" >= "takenOn")
);
CREATE INDEX "Backup_controllerId_idx" ON "Backup"("controllerId");
ALTER TABLE "Backup" ADD CONSTRAINT "Backup_controllerId_fkey" FOREIGN KEY ("controllerId") REFERENCES "Controller"("id") ON DELETE CASCADE ON UPDATE CASCADE;

CREATE TABLE "Contact" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "lineId" UUID,
    "role" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "hours" TEXT NOT NULL,
    "note" TEXT,
    CONSTRAINT "Contact_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "Contact_siteId_idx" ON "Contact"("siteId");
CREATE INDEX "Contact_lineId_idx" ON "Contact"("lineId");
ALTER TABLE "Contact" ADD CONSTRAINT "Contact_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "Contact" ADD CONSTRAINT "Contact_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;
