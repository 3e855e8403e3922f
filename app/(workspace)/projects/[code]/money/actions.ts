"use server";

import { costFile, handedCosts } from "@/app/(workspace)/projects/[code]/money/costFile";
import { action } from "@/lib/access/action";
import { splitBudget, stateRest } from "@/lib/data/projectBudget";
import { askChange, decideChange, withdrawChange } from "@/lib/data/projectChangeOrder";
import { addCost, removeCost } from "@/lib/data/projectCost";
import { importCosts, previewCosts, takeBackCosts } from "@/lib/data/projectImport";
import { setMonthRate } from "@/lib/data/projectRates";
import * as schema from "@/lib/schema/projectMoney";

export const addThisCost = action({ needs: "project:write", input: schema.addCost, run: addCost });
export const removeThisCost = action({ needs: "project:write", input: schema.removeCost, run: removeCost });
export const splitThisBudget = action({
  needs: "project:write",
  input: schema.splitBudget,
  run: splitBudget,
});
export const stateThisRest = action({ needs: "project:write", input: schema.stateRest, run: stateRest });
export const askThisChange = action({ needs: "project:write", input: schema.askChange, run: askChange });
export const decideThisChange = action({
  needs: "plan:approve",
  input: schema.decideChange,
  run: decideChange,
});
export const withdrawThisChange = action({
  needs: "project:write",
  input: schema.withdrawChange,
  run: withdrawChange,
});
export const setThisMonthRate = action({
  needs: "plan:write",
  input: schema.setMonthRate,
  run: setMonthRate,
});
export const readTheseCosts = action({
  needs: "project:write",
  input: costFile,
  run: async (actor, form) => previewCosts(actor, await handedCosts(form)),
});
export const takeTheseCosts = action({
  needs: "project:write",
  input: costFile,
  run: async (actor, form) => importCosts(actor, await handedCosts(form)),
});
export const takeCostsBack = action({
  needs: "project:write",
  input: schema.takeBackCosts,
  run: takeBackCosts,
});
