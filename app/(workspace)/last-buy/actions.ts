"use server";

import { action } from "@/lib/access/action";
import { keepBuyDecision } from "@/lib/data/buyDecision";
import { keepDecision } from "@/lib/schema/buyDecision";

export const keepThisDecision = action({ needs: "stock:write", input: keepDecision, run: keepBuyDecision });
