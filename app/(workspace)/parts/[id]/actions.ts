"use server";

import { action } from "@/lib/access/action";
import { putOnHold, releaseHold } from "@/lib/data/holdChange";
import { changePartPlate } from "@/lib/data/plateChange";
import { changeStock } from "@/lib/data/stockChange";
import * as plate from "@/lib/schema/plate";
import { changeStockLot } from "@/lib/schema/stockLot";
import { holdPieces, releasePieces } from "@/lib/schema/storageCare";

export const saveStockLot = action({ needs: "stock:write", input: changeStockLot, run: changeStock });
export const holdThesePieces = action({ needs: "stock:write", input: holdPieces, run: putOnHold });
export const releaseThesePieces = action({ needs: "stock:write", input: releasePieces, run: releaseHold });
export const savePartPlate = action({
  needs: "register:import",
  input: plate.changePartPlate,
  run: changePartPlate,
});
