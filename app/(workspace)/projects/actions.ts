"use server";

import { action } from "@/lib/access/action";
import { changeProject, removeProject, setMilestone } from "@/lib/data/projectChange";
import { addCost, removeCost } from "@/lib/data/projectCost";
import * as schema from "@/lib/schema/project";

export const addThisCost = action({ needs: "project:write", input: schema.addCost, run: addCost });
export const removeThisCost = action({ needs: "project:write", input: schema.removeCost, run: removeCost });
export const setThisMilestone = action({
  needs: "project:write",
  input: schema.setMilestone,
  run: setMilestone,
});
export const changeThisProject = action({
  needs: "project:write",
  input: schema.changeProject,
  run: changeProject,
});
export const removeThisProject = action({
  needs: "project:write",
  input: schema.removeProject,
  run: removeProject,
});
