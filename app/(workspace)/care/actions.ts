"use server";

import { action } from "@/lib/access/action";
import { recordStorageCare, setClassCare, takeCareBack } from "@/lib/data/storageCareChange";
import * as schema from "@/lib/schema/storageCare";

export const recordThisCare = action({
  needs: "stock:write",
  input: schema.recordCare,
  run: recordStorageCare,
});
export const takeThisCareBack = action({ needs: "stock:write", input: schema.undoCare, run: takeCareBack });
export const setThisClassCare = action({
  needs: "stock:write",
  input: schema.setCareInterval,
  run: setClassCare,
});
