"use server";

import { action } from "@/lib/access/action";
import { changeRule } from "@/lib/data/ruleChange";
import { previewRule } from "@/lib/data/ruleEffect";
import { changedRule, proposedRule } from "@/lib/schema/compatibilityRule";

export const seeEffect = action({ needs: "plan:write", input: proposedRule, run: previewRule });

export const writeRule = action({ needs: "plan:write", input: changedRule, run: changeRule });
