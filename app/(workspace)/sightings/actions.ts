"use server";

import { action } from "@/lib/access/action";
import { restoreMachine, retireMachine } from "@/lib/data/retireChange";
import { settleFinding, takeFindingBack } from "@/lib/data/sightingChange";
import * as schema from "@/lib/schema/sighting";

export const settleThisFinding = action({
  needs: "line:write",
  input: schema.settleSighting,
  run: settleFinding,
});
export const takeThisFindingBack = action({
  needs: "line:write",
  input: schema.takeVerdictBack,
  run: takeFindingBack,
});
export const retireThisMachine = action({
  needs: "line:write",
  input: schema.retireMachine,
  run: retireMachine,
});
export const restoreThisMachine = action({
  needs: "line:write",
  input: schema.restoreMachine,
  run: restoreMachine,
});
