"use server";

import { action } from "@/lib/access/action";
import { changeThisRepair, receiveFromRepair, sendForRepair, takeRepairBack } from "@/lib/data/repairChange";
import * as schema from "@/lib/schema/repair";

export const sendThisUnit = action({ needs: "stock:write", input: schema.sendUnit, run: sendForRepair });
export const saveThisRepair = action({
  needs: "stock:write",
  input: schema.changeRepair,
  run: changeThisRepair,
});
export const receiveThisUnit = action({
  needs: "stock:write",
  input: schema.receiveUnit,
  run: receiveFromRepair,
});
export const takeThisRepairBack = action({
  needs: "stock:write",
  input: schema.undoRepair,
  run: takeRepairBack,
});
