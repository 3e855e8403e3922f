"use server";

import { action } from "@/lib/access/action";
import { mergeParts } from "@/lib/data/partMerge";
import { mergeTwo } from "@/lib/schema/partIdentity";

export const mergeTheseParts = action({ needs: "register:import", input: mergeTwo, run: mergeParts });
