/** What money of a project is for, in the order it is shown. */
export const costClasses = [
  "drives",
  "controllers",
  "engineering",
  "installation",
  "training",
  "contingency",
] as const;

export type CostClass = (typeof costClasses)[number];
