"use server";

import { action } from "@/lib/access/action";
import { changeStock } from "@/lib/data/stockChange";
import { changeStockLot } from "@/lib/schema/stockLot";

export const saveStockLot = action({ needs: "stock:write", input: changeStockLot, run: changeStock });
