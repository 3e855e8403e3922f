"use server";

import { action } from "@/lib/access/action";
import * as duties from "@/lib/data/obligationChange";
import * as schema from "@/lib/schema/obligation";

export const addDuty = action({
  needs: "line:write",
  input: schema.addObligation,
  run: duties.addObligation,
});
export const changeDuty = action({
  needs: "line:write",
  input: schema.changeObligation,
  run: duties.changeObligation,
});
export const settleDuty = action({
  needs: "line:write",
  input: schema.settleObligation,
  run: duties.settleObligation,
});
export const removeDuty = action({
  needs: "line:write",
  input: schema.removeObligation,
  run: duties.removeObligation,
});
