"use server";

import { action } from "@/lib/access/action";
import { unmergeParts } from "@/lib/data/partMerge";
import { settlePartNumber, takePartNumberBack } from "@/lib/data/partNumberChange";
import { settleNumber, takeNumberBack, unmergeOne } from "@/lib/schema/partIdentity";

export const settleThisNumber = action({
  needs: "register:import",
  input: settleNumber,
  run: settlePartNumber,
});
export const takeThisNumberBack = action({
  needs: "register:import",
  input: takeNumberBack,
  run: takePartNumberBack,
});
export const unmergeTheseParts = action({ needs: "register:import", input: unmergeOne, run: unmergeParts });
