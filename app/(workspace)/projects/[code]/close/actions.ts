"use server";

import { action } from "@/lib/access/action";
import { closeThisProject, reopenThisProject } from "@/lib/data/closeProject";
import { stateForProject, withdrawFromProject } from "@/lib/data/closeStatement";
import { dropFittedUnit, fitProjectUnit } from "@/lib/data/fitChange";
import { addRemovedUnit, changeRemovedUnit, dropRemovedUnit } from "@/lib/data/releaseChange";
import * as schema from "@/lib/schema/closing";

export const addThisRemoved = action({
  needs: "project:write",
  input: schema.addRemoved,
  run: addRemovedUnit,
});
export const changeThisRemoved = action({
  needs: "project:write",
  input: schema.changeRemoved,
  run: changeRemovedUnit,
});
export const dropThisRemoved = action({
  needs: "project:write",
  input: schema.dropRemoved,
  run: dropRemovedUnit,
});
export const fitThisUnit = action({ needs: "project:write", input: schema.fitUnit, run: fitProjectUnit });
export const dropThisFitted = action({
  needs: "project:write",
  input: schema.dropFitted,
  run: dropFittedUnit,
});
export const stateThis = action({
  needs: "project:write",
  input: schema.stateForClosing,
  run: stateForProject,
});
export const withdrawThis = action({
  needs: "project:write",
  input: schema.withdrawStatement,
  run: withdrawFromProject,
});
export const closeIt = action({ needs: "project:write", input: schema.closeProject, run: closeThisProject });
export const reopenIt = action({
  needs: "project:write",
  input: schema.reopenProject,
  run: reopenThisProject,
});
