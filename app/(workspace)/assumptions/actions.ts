"use server";

import { action } from "@/lib/access/action";
import { chooseAssumptions, stateAssumptions } from "@/lib/data/assumptionsChange";
import { chosenAssumptions, ownAssumptions } from "@/lib/schema/assumptions";

export const stateValues = action({ needs: "plan:write", input: ownAssumptions, run: stateAssumptions });

export const chooseSet = action({ needs: "plan:write", input: chosenAssumptions, run: chooseAssumptions });
