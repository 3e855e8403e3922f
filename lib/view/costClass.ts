import { type CostClass, costClasses } from "@/lib/schema/costClass";

const WORDS = {
  drives: "Drives and motors",
  controllers: "Controllers and network",
  engineering: "Engineering and programs",
  installation: "Installation and commissioning",
  training: "Training and first spares",
  contingency: "Contingency",
} satisfies Record<CostClass, string>;

/** A class of costs in words; null is money nobody has sorted. */
export function costClassWords(costClass: CostClass | null): string {
  return costClass === null ? "Not sorted" : WORDS[costClass];
}

/** The classes for a list to choose from, in their order. */
export const costClassChoices = costClasses.map((value) => ({ value, label: WORDS[value] }));
