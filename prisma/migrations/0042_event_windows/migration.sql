-- What happened to a line, a machine or a place is asked for some years only: the rest need not be touched.
CREATE INDEX "Event_lineId_happenedAt_idx" ON "Event" ("lineId", "happenedAt");
CREATE INDEX "Event_machineId_happenedAt_idx" ON "Event" ("machineId", "happenedAt");
CREATE INDEX "Event_positionId_happenedAt_idx" ON "Event" ("positionId", "happenedAt");
DROP INDEX "Event_lineId_idx";
DROP INDEX "Event_machineId_idx";
DROP INDEX "Event_positionId_idx";
