"use server";

import { action } from "@/lib/access/action";
import { forgetSourceWord, setSourceNulls, teachSourceWord } from "@/lib/data/importSourceChange";
import { forgetWord, setNullWords, teachWord } from "@/lib/schema/importSource";

export const teachThisWord = action({ needs: "register:import", input: teachWord, run: teachSourceWord });
export const forgetThisWord = action({ needs: "register:import", input: forgetWord, run: forgetSourceWord });
export const setTheseNulls = action({ needs: "register:import", input: setNullWords, run: setSourceNulls });
