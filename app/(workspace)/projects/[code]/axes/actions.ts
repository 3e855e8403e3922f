"use server";

import { action } from "@/lib/access/action";
import { acceptAxis, setAxisEntry } from "@/lib/data/axisRecordChange";
import * as schema from "@/lib/schema/axisRecord";

export const setThisAxisEntry = action({
  needs: "event:write",
  input: schema.setAxisEntry,
  run: setAxisEntry,
});
export const acceptThisAxis = action({ needs: "project:write", input: schema.acceptAxis, run: acceptAxis });
