"use server";

import { action } from "@/lib/access/action";
import { checkThisBenefit, reopenThisBenefit } from "@/lib/data/benefitChange";
import * as schema from "@/lib/schema/closing";

export const checkIt = action({ needs: "project:write", input: schema.checkBenefit, run: checkThisBenefit });
export const reopenCheck = action({
  needs: "project:write",
  input: schema.reopenBenefit,
  run: reopenThisBenefit,
});
