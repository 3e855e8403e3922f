import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readAxes } from "@/lib/data/axes";
import { figureList } from "@/lib/data/exports/figureList";
import type { ListQuestion } from "@/lib/data/exports/recordList";
import { type ListedAxis, readAxisFilter } from "@/lib/view/axisList";

/** The axes a page's filters leave, page after page. */
async function* everyPage(actor: Actor, { asOf, asked }: ListQuestion): AsyncGenerator<ListedAxis> {
  const filter = readAxisFilter({ get: (name) => asked.get(name) ?? null });
  let after: string | null = null;
  do {
    const page = await readAxes(actor, { asOf, filter, after });
    yield* page.axes;
    after = page.next;
  } while (after !== null);
}

/** Axes as their page shows them, with its filters. */
export const axisList = figureList({
  ...{ name: "axes", title: "Axes", about: "Axes with drive, motor, panel and network", page: "/axes" },
  read: everyPage,
  columns: [
    ["id", "id", "Id", ({ id }) => id],
    ["site", "text", "Site", ({ siteCode }) => siteCode],
    ["line", "text", "Line", ({ lineCode }) => lineCode],
    ["machine", "text", "Machine", ({ machineCode }) => machineCode],
    ["machineId", "id", "Machine id", ({ machineId }) => machineId],
    ["axis", "text", "Axis", ({ axisCode }) => axisCode],
    ["name", "text", "Name", ({ axisName }) => axisName],
    ["drive", "text", "Drive", ({ drive }) => drive?.number ?? null],
    ["driveId", "id", "Drive's part id", ({ drive }) => drive?.id ?? null],
    ["family", "text", "Family", ({ family }) => family],
    ["motor", "text", "Motor", ({ motor }) => motor?.number ?? null],
    ["motorId", "id", "Motor's part id", ({ motor }) => motor?.id ?? null],
    ["panel", "text", "Panel", ({ panel }) => panel],
    ["network", "text", "Network", ({ network }) => network],
    ["networkKind", "text", "Kind of network", ({ networkKind }) => networkKind],
    ["nodeAddress", "number", "Node address", ({ nodeAddress }) => nodeAddress],
    ["ringOrder", "number", "Place in the ring", ({ ringOrder }) => ringOrder],
    ["feedback", "text", "Feedback", ({ feedback }) => feedback],
    ["countsPerUnit", "number", "Counts per unit of travel", (axis) => axis.countsPerUnit],
    ["travelUnit", "text", "Unit of travel", ({ travelUnit }) => travelUnit],
    ["inServiceYear", "number", "In service since", (axis) => axis.inServiceYear],
    ["evidence", "text", "Evidence", ({ evidence }) => evidence],
  ],
});
