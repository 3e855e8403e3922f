"use server";

import { action } from "@/lib/access/action";
import { acceptAxis, setAxisEntry } from "@/lib/data/axisRecordChange";
import { markAxes, setRound, unmarkAxes } from "@/lib/data/axisStepsChange";
import * as schema from "@/lib/schema/axisRecord";
import * as steps from "@/lib/schema/axisStep";

export const setThisAxisEntry = action({
  needs: "event:write",
  inProject: true,
  input: schema.setAxisEntry,
  run: setAxisEntry,
});
export const acceptThisAxis = action({ needs: "project:write", input: schema.acceptAxis, run: acceptAxis });
export const markTheseAxes = action({
  needs: "event:write",
  inProject: true,
  input: steps.markAxes,
  run: markAxes,
});
export const unmarkTheseAxes = action({
  needs: "event:write",
  inProject: true,
  input: steps.unmarkAxes,
  run: unmarkAxes,
});
export const setThisRound = action({ needs: "project:write", input: steps.setRound, run: setRound });
