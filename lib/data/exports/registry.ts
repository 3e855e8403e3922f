import "server-only";
import { axisList } from "@/lib/data/exports/axisList";
import { basisLists } from "@/lib/data/exports/basisLists";
import { cutoverLists } from "@/lib/data/exports/cutoverLists";
import { eventLists } from "@/lib/data/exports/eventLists";
import type { FigureList } from "@/lib/data/exports/figureList";
import { figureLists } from "@/lib/data/exports/figureLists";
import { historyLists } from "@/lib/data/exports/historyLists";
import { installedLists } from "@/lib/data/exports/installedLists";
import { partLists } from "@/lib/data/exports/partLists";
import { planLists } from "@/lib/data/exports/planLists";
import { projectLists } from "@/lib/data/exports/projectLists";
import type { RecordList } from "@/lib/data/exports/recordList";
import { scheduleLists } from "@/lib/data/exports/scheduleLists";
import { shelfLists } from "@/lib/data/exports/shelfLists";
import { trailLists } from "@/lib/data/exports/trailLists";

/** Lists stored row by row. */
export const recordLists: readonly RecordList[] = [
  ...installedLists,
  ...partLists,
  ...shelfLists,
  ...eventLists,
  ...trailLists,
  ...planLists,
  ...basisLists,
  ...projectLists,
  ...scheduleLists,
  ...cutoverLists,
];

/** Every list that can be saved, by name. */
export const savedLists: ReadonlyMap<string, RecordList | FigureList> = new Map(
  [...figureLists, axisList, ...historyLists, ...recordLists].map((list) => [list.name, list]),
);
