"use server";

import { action } from "@/lib/access/action";
import { acceptRisk, endAcceptance, reopenAcceptance } from "@/lib/data/acceptanceChange";
import { changeLine } from "@/lib/data/lineChange";
import * as acceptance from "@/lib/schema/acceptance";
import { changeLineFigures } from "@/lib/schema/lineFigures";

export const saveLineFigures = action({ needs: "line:write", input: changeLineFigures, run: changeLine });
export const acceptThisRisk = action({
  needs: "plan:approve",
  input: acceptance.acceptRisk,
  run: acceptRisk,
});
export const endThisAcceptance = action({
  needs: "plan:approve",
  input: acceptance.endAcceptance,
  run: endAcceptance,
});
export const reopenThisAcceptance = action({
  needs: "plan:approve",
  input: acceptance.reopenAcceptance,
  run: reopenAcceptance,
});
