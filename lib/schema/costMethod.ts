/** How the cost of a stop was found. */
export const COST_METHODS = ["margin", "contract", "estimate"] as const;
export type CostMethod = (typeof COST_METHODS)[number];
