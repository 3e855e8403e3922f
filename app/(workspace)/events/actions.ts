"use server";

import { action } from "@/lib/access/action";
import { keepEvent, takeEventBack } from "@/lib/data/eventCapture";
import { captureEvent, undoEvent } from "@/lib/schema/event";

export const keepThisEvent = action({ needs: "event:write", input: captureEvent, run: keepEvent });
export const takeThisEventBack = action({ needs: "event:write", input: undoEvent, run: takeEventBack });
