"use server";

import { action } from "@/lib/access/action";
import * as actions from "@/lib/data/reviewActionChange";
import * as buys from "@/lib/data/reviewBuyChange";
import * as reviews from "@/lib/data/reviewChange";
import * as schema from "@/lib/schema/review";

export const openThisReview = action({
  needs: "stock:write",
  input: schema.openReview,
  run: reviews.openReview,
});
export const dropThisReview = action({
  needs: "stock:write",
  input: schema.dropReview,
  run: reviews.dropReview,
});
export const closeThisReview = action({
  needs: "stock:write",
  input: schema.closeReview,
  run: reviews.closeReview,
});
export const setThisNote = action({
  needs: "stock:write",
  input: schema.setReviewNote,
  run: reviews.setReviewNote,
});
export const addAnAction = action({
  needs: "event:write",
  input: schema.addAction,
  run: actions.addReviewAction,
});
export const changeThisAction = action({
  needs: "event:write",
  input: schema.changeAction,
  run: actions.changeReviewAction,
});
export const settleThisAction = action({
  needs: "event:write",
  input: schema.settleAction,
  run: actions.settleReviewAction,
});
export const removeThisAction = action({
  needs: "event:write",
  input: schema.removeAction,
  run: actions.removeReviewAction,
});
export const addABuy = action({ needs: "stock:write", input: schema.addBuy, run: buys.addReviewBuy });
export const changeThisBuy = action({
  needs: "stock:write",
  input: schema.changeBuy,
  run: buys.changeReviewBuy,
});
export const removeThisBuy = action({
  needs: "stock:write",
  input: schema.removeBuy,
  run: buys.removeReviewBuy,
});
