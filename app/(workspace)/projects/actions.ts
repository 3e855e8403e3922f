"use server";

import { action } from "@/lib/access/action";
import { changeProject, removeProject, setMilestone } from "@/lib/data/projectChange";
import * as schema from "@/lib/schema/project";

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
