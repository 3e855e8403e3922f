import type { ChartLine } from "@/lib/view/spanChart";

/** How each line of a chart is drawn; told apart by dash as well as by colour. */
export const LOOKS: Record<ChartLine["look"], { stroke: string; dash?: string; width: number }> = {
  main: { stroke: "var(--money-5)", width: 2 },
  second: { stroke: "var(--accent)", dash: "6 4", width: 2 },
  third: { stroke: "var(--worse)", dash: "2 3", width: 2 },
};
