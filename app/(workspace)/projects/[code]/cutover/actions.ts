"use server";

import { action } from "@/lib/access/action";
import { addProjectCutover, changeProjectCutover, dropProjectCutover } from "@/lib/data/cutoverChange";
import {
  addCutoverStep,
  changeCutoverStep,
  clockCutoverStep,
  dropCutoverStep,
} from "@/lib/data/cutoverStepChange";
import * as schema from "@/lib/schema/cutover";

export const addThisCutover = action({
  needs: "project:write",
  input: schema.addCutover,
  run: addProjectCutover,
});
export const changeThisCutover = action({
  needs: "project:write",
  input: schema.changeCutover,
  run: changeProjectCutover,
});
export const dropThisCutover = action({
  needs: "project:write",
  input: schema.dropCutover,
  run: dropProjectCutover,
});
export const addThisStep = action({ needs: "project:write", input: schema.addStep, run: addCutoverStep });
export const changeThisStep = action({
  needs: "project:write",
  input: schema.changeStep,
  run: changeCutoverStep,
});
export const dropThisStep = action({ needs: "project:write", input: schema.dropStep, run: dropCutoverStep });
export const clockThisStep = action({
  needs: "project:write",
  input: schema.clockStep,
  run: clockCutoverStep,
});
