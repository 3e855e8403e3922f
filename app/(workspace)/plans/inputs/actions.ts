"use server";

import { action } from "@/lib/access/action";
import { stateFigure, withdrawFigure } from "@/lib/data/planInputsChange";
import {
  addPrecedence,
  removeFreeze,
  removePrecedence,
  removeWindow,
  saveFreeze,
  saveWindow,
} from "@/lib/data/planRowsChange";
import * as schema from "@/lib/schema/planInputs";

const needs = "plan:write";

export const stateThisFigure = action({ needs, input: schema.stateFigure, run: stateFigure });
export const withdrawThisFigure = action({ needs, input: schema.withdrawFigure, run: withdrawFigure });
export const saveThisWindow = action({ needs, input: schema.saveWindow, run: saveWindow });
export const removeThisWindow = action({ needs, input: schema.removeWindow, run: removeWindow });
export const saveThisFreeze = action({ needs, input: schema.saveFreeze, run: saveFreeze });
export const removeThisFreeze = action({ needs, input: schema.removeFreeze, run: removeFreeze });
export const addThisOrder = action({ needs, input: schema.addPrecedence, run: addPrecedence });
export const removeThisOrder = action({ needs, input: schema.removePrecedence, run: removePrecedence });
