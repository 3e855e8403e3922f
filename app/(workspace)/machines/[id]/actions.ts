"use server";

import { action } from "@/lib/access/action";
import { changeAxisFacts } from "@/lib/data/axisFacts";
import * as entries from "@/lib/data/cardChange";
import * as panels from "@/lib/data/panelChange";
import { changeControllerPlate } from "@/lib/data/plateChange";
import * as removed from "@/lib/data/putBack";
import { restoreMachine, retireMachine } from "@/lib/data/retireChange";
import * as axis from "@/lib/schema/axisFacts";
import * as schema from "@/lib/schema/cardEntry";
import * as panel from "@/lib/schema/panel";
import * as plate from "@/lib/schema/plate";
import * as sighting from "@/lib/schema/sighting";

export const addCopy = action({ needs: "line:write", input: schema.addBackup, run: entries.addBackup });
export const removeCopy = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: entries.removeBackup,
});
export const addNumber = action({ needs: "line:write", input: schema.addContact, run: entries.addContact });
export const removeNumber = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: entries.removeContact,
});
export const putCopyBack = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: removed.putBackBackup,
});
export const putNumberBack = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: removed.putBackContact,
});
export const saveAxisFacts = action({
  needs: "line:write",
  input: axis.changeAxisFacts,
  run: changeAxisFacts,
});
export const savePlate = action({
  needs: "line:write",
  input: plate.changeControllerPlate,
  run: changeControllerPlate,
});
export const newPanel = action({ needs: "line:write", input: panel.addPanel, run: panels.addPanel });
export const changeCabinet = action({
  needs: "line:write",
  input: panel.changePanel,
  run: panels.changePanel,
});
export const dropPanel = action({ needs: "line:write", input: panel.onePanel, run: panels.removePanel });
export const putPanelBack = action({ needs: "line:write", input: panel.onePanel, run: removed.putBackPanel });
export const placePanels = action({
  needs: "line:write",
  input: panel.placeInPanels,
  run: panels.placeInPanels,
});
export const retireThis = action({
  needs: "line:write",
  input: sighting.retireMachine,
  run: retireMachine,
});
export const restoreThis = action({
  needs: "line:write",
  input: sighting.restoreMachine,
  run: restoreMachine,
});
