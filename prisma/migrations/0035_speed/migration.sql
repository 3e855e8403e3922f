-- What keeps a page as fast as what it shows, however much is on record.

-- Beginnings in their order, so that a search stops after the first few.
CREATE INDEX "Unit_serial_begin" ON "Unit" (("searchKey"("serial") COLLATE "C"), "id");
CREATE INDEX "Position_designation_begin" ON "Position" (("searchKey"("designation") COLLATE "C"), "id");
CREATE INDEX "Axis_code_begin" ON "Axis" (("searchKey"("code") COLLATE "C"), "id");
CREATE INDEX "Axis_name_begin" ON "Axis" (("searchKey"("name") COLLATE "C"), "id");

CREATE INDEX "Axis_code_search" ON "Axis" USING gin ("searchKey"("code") gin_trgm_ops);
CREATE INDEX "Axis_name_search" ON "Axis" USING gin ("searchKey"("name") gin_trgm_ops);
CREATE INDEX "Machine_code_begin" ON "Machine" (("searchKey"("code") COLLATE "C"), "id");
CREATE INDEX "Machine_code_search" ON "Machine" USING gin ("searchKey"("code") gin_trgm_ops);
CREATE INDEX "Machine_name_search" ON "Machine" USING gin ("searchKey"("name") gin_trgm_ops);
CREATE INDEX "StockLot_bin_search" ON "StockLot" USING gin ("searchKey"("bin") gin_trgm_ops);
CREATE INDEX "Controller_designation_search" ON "Controller" USING gin ("searchKey"("designation") gin_trgm_ops);
CREATE INDEX "Controller_model_search" ON "Controller" USING gin ("searchKey"("model") gin_trgm_ops);

-- Events of a site in a window.
CREATE INDEX "Event_siteId_happenedAt_idx" ON "Event" ("siteId", "happenedAt");
