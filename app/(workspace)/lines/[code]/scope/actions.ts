"use server";

import { action } from "@/lib/access/action";
import { changeScopeNorm } from "@/lib/data/scopeNorms";
import { changeScopeNorm as input } from "@/lib/schema/scopeNorms";

export const saveNorm = action({ needs: "plan:write", input, run: changeScopeNorm });
