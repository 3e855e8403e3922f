"use server";

import { action } from "@/lib/access/action";
import { setEffort } from "@/lib/data/effortNormChange";
import * as schema from "@/lib/schema/effortNorm";

export const setThisEffort = action({ needs: "line:write", input: schema.setEffortNorm, run: setEffort });
