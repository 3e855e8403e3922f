"use server";

import { action } from "@/lib/access/action";
import { keepEvent, takeEventBack } from "@/lib/data/eventCapture";
import { partEvents, settleEvents } from "@/lib/data/eventMatchChange";
import { captureEvent, undoEvent } from "@/lib/schema/event";
import { partPair, settlePair } from "@/lib/schema/eventMatch";

export const keepThisEvent = action({ needs: "event:write", input: captureEvent, run: keepEvent });
export const takeThisEventBack = action({ needs: "event:write", input: undoEvent, run: takeEventBack });
export const settleThisPair = action({ needs: "event:write", input: settlePair, run: settleEvents });
export const partThisPair = action({ needs: "event:write", input: partPair, run: partEvents });
