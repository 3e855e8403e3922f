"use server";

import { action } from "@/lib/access/action";
import {
  addOpenPoint,
  changeOpenPoint,
  dropOpenPoint,
  settleOpenPoint,
} from "@/lib/data/projectPointsChange";
import { addProjectRisk, changeProjectRisk, dropProjectRisk } from "@/lib/data/projectRiskChange";
import * as schema from "@/lib/schema/projectPoints";

export const addThisPoint = action({
  needs: "event:write",
  inProject: true,
  input: schema.addPoint,
  run: addOpenPoint,
});
export const changeThisPoint = action({
  needs: "project:write",
  input: schema.changePoint,
  run: changeOpenPoint,
});
export const settleThisPoint = action({
  needs: "project:write",
  input: schema.settlePoint,
  run: settleOpenPoint,
});
export const dropThisPoint = action({ needs: "project:write", input: schema.dropPoint, run: dropOpenPoint });
export const addThisRisk = action({ needs: "project:write", input: schema.addRisk, run: addProjectRisk });
export const changeThisRisk = action({
  needs: "project:write",
  input: schema.changeRisk,
  run: changeProjectRisk,
});
export const dropThisRisk = action({ needs: "project:write", input: schema.dropRisk, run: dropProjectRisk });
