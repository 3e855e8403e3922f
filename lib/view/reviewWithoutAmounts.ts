import type { MovedValue } from "@/lib/risk/moved/movedPools";
import { byWorse, gotWorse, mainStep, type ReviewFigures } from "@/lib/view/review";
import type { ReviewRecord } from "@/lib/view/reviewRecord";

const STILL: MovedValue = {
  ...{ before: null, after: null, change: 0 },
  steps: { corrections: 0, events: 0, stock: 0, dates: 0, assumptions: 0, clock: 0 },
};

/** A review as it leaves for somebody to whom amounts are not shown: what got worse in chance or pieces, no prices. */
export function reviewWithoutAmounts<R extends ReviewRecord>(review: R): R {
  return {
    ...review,
    figures: figuresWithoutAmounts(review.figures),
    buys: review.buys.map((buy) => ({ ...buy, price: null })),
  };
}

function figuresWithoutAmounts(figures: ReviewFigures): ReviewFigures {
  const worse = figures.worse.map((part) => ({ ...part, loss: STILL })).filter(gotWorse);
  return { ...figures, worse: worse.map((part) => ({ ...part, main: mainStep(part) })).sort(byWorse) };
}
