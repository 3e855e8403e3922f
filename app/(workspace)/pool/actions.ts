"use server";

import { action } from "@/lib/access/action";
import { askForTransfer, moveTransfer } from "@/lib/data/transferChange";
import { askTransfer, stepTransfer } from "@/lib/schema/transfer";

export const askTransferOf = action({ needs: "stock:write", input: askTransfer, run: askForTransfer });
export const stepTransferOn = action({ needs: "stock:write", input: stepTransfer, run: moveTransfer });
