-- When a line can be worked on: the windows a retrofit has to fit into.

CREATE TABLE "ShutdownWindow" (
    "id" UUID NOT NULL,
    "siteId" UUID NOT NULL,
    "lineId" UUID,
    "name" TEXT NOT NULL,
    "startsOn" DATE NOT NULL,
    "endsOn" DATE NOT NULL,
    "usableHours" DECIMAL(8,1),
    "note" TEXT,
    CONSTRAINT "ShutdownWindow_pkey" PRIMARY KEY ("id"),
    CONSTRAINT "ShutdownWindow_ends_after" CHECK ("endsOn" >= "startsOn"),
    CONSTRAINT "ShutdownWindow_hours_fit" CHECK ("usableHours" >= 0 AND "usableHours" <= 24 * ("endsOn" - "startsOn" + 1))
);
CREATE INDEX "ShutdownWindow_siteId_idx" ON "ShutdownWindow"("siteId");
CREATE INDEX "ShutdownWindow_lineId_idx" ON "ShutdownWindow"("lineId");
ALTER TABLE "ShutdownWindow" ADD CONSTRAINT "ShutdownWindow_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ShutdownWindow" ADD CONSTRAINT "ShutdownWindow_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "Line"("id") ON DELETE SET NULL ON UPDATE CASCADE;
