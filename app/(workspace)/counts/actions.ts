"use server";

import { action } from "@/lib/access/action";
import * as change from "@/lib/data/countChange";
import { approveStockCount, postStockCount, takeBackStockCount } from "@/lib/data/countPost";
import * as schema from "@/lib/schema/count";

export const openThisCount = action({
  needs: "stock:write",
  input: schema.openCount,
  run: change.openStockCount,
});
export const dropThisCount = action({
  needs: "stock:write",
  input: schema.oneCount,
  run: change.dropStockCount,
});
export const writeThisLine = action({
  needs: "event:write",
  input: schema.setCountLine,
  run: change.writeCountLine,
});
export const addThisFind = action({
  needs: "event:write",
  input: schema.addCountLine,
  run: change.addFoundPieces,
});
export const dropThisFind = action({
  needs: "event:write",
  input: schema.dropCountLine,
  run: change.dropFoundPieces,
});
export const approveThisCount = action({
  needs: "stock:write",
  input: schema.settleCount,
  run: approveStockCount,
});
export const postThisCount = action({ needs: "stock:write", input: schema.settleCount, run: postStockCount });
export const takeThisCountBack = action({
  needs: "stock:write",
  input: schema.oneCount,
  run: takeBackStockCount,
});
