"use server";

import { action } from "@/lib/access/action";
import { makeBoard } from "@/lib/data/planBoardChange";
import { decidePlan, deletePlan, movePlan } from "@/lib/data/planChange";
import { keepPlan } from "@/lib/data/planKeep";
import { startProject } from "@/lib/data/projectStart";
import * as schema from "@/lib/schema/plan";
import * as boardSchema from "@/lib/schema/planBoard";

export const keepThisPlan = action({ needs: "plan:write", input: schema.keepPlan, run: keepPlan });
export const moveThisPlan = action({ needs: "plan:write", input: schema.movePlan, run: movePlan });
export const decideThisPlan = action({ needs: "plan:approve", input: schema.decidePlan, run: decidePlan });
export const deleteThisPlan = action({ needs: "plan:write", input: schema.deletePlan, run: deletePlan });
export const startThisProject = action({
  needs: "project:write",
  input: schema.startProject,
  run: startProject,
});
export const makeThisBoard = action({ needs: "plan:write", input: boardSchema.makeBoard, run: makeBoard });
