import type { Column } from "@/app/_ui/DataTable/column";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import type { FactGroup } from "@/lib/schema/axisFacts";
import { cableWords, endsWords, homingWords, knownWords, wayWords } from "@/lib/view/axisFacts";
import type { ListedAxis } from "@/lib/view/axisList";
import { evidenceMark } from "@/lib/view/evidence";
import { countsWords, networkKindName } from "@/lib/view/machine";

/** A column of cables, travel or homing, with how well it is known. */
function fact(
  group: FactGroup,
  key: string,
  { header, words }: { readonly header: string; readonly words: (axis: ListedAxis) => string },
): Column<ListedAxis> {
  return {
    ...{ key, header, priority: 3, hidden: true },
    value: words,
    cell: (axis) => (
      <>
        {words(axis)}
        <span className="block text-ink-2 text-xs">{knownWords(axis, group)}</span>
      </>
    ),
  };
}

/** Facts that are shown once a person chooses them. */
const FACTS: readonly Column<ListedAxis>[] = [
  fact("powerCable", "power", { header: "Power cable", words: (axis) => cableWords(axis, "powerCable") }),
  fact("feedbackCable", "signal", {
    header: "Feedback cable",
    words: (axis) => cableWords(axis, "feedbackCable"),
  }),
  fact("travel", "travel", { header: "Travel", words: wayWords }),
  fact("travel", "hard", { header: "Hardware ends", words: (axis) => endsWords(axis, "hard") }),
  fact("travel", "soft", { header: "Software ends", words: (axis) => endsWords(axis, "soft") }),
  fact("homing", "homing", { header: "Homing", words: homingWords }),
];

/** Columns of the list of axes; the keys of those the server can sort by are the names of its sorts. */
export const axisColumns: readonly Column<ListedAxis>[] = [
  {
    ...{ key: "place", header: "Axis", width: "9rem" },
    value: ({ lineCode, machineCode, axisCode }) => `${lineCode} / ${machineCode} / ${axisCode}`,
  },
  { ...{ key: "name", header: "Name", priority: 3 }, value: ({ axisName }) => axisName },
  {
    ...{ key: "drive", header: "Drive", priority: 1 },
    value: ({ drive }) => drive?.number ?? null,
    cell: ({ drive, family }) => (
      <>
        {drive?.number ?? "not identified"}
        {family === null ? null : <span className="block text-ink-2 text-xs">{family}</span>}
      </>
    ),
  },
  {
    ...{ key: "motor", header: "Motor" },
    value: ({ motor }) => motor?.number ?? null,
    cell: ({ motor }) => motor?.number ?? "not identified",
  },
  { ...{ key: "panel", header: "Panel" }, value: ({ panel }) => panel },
  { ...{ key: "feedback", header: "Feedback", priority: 3 }, value: ({ feedback }) => feedback },
  {
    ...{ key: "network", header: "Network" },
    value: ({ network }) => network,
    cell: ({ network, networkKind, profileFamily }) =>
      network === null || networkKind === null ? (
        <span className="text-ink-2">not known</span>
      ) : (
        <>
          {network}
          <span className="block text-ink-2 text-xs">
            {networkKindName(networkKind)}
            {profileFamily === null ? null : `, CPF ${profileFamily}`}
          </span>
        </>
      ),
  },
  { ...{ key: "node", header: "Node", align: "end" }, value: ({ nodeAddress }) => nodeAddress },
  { ...{ key: "counts", header: "Counts", unit: "per unit of travel", priority: 3 }, value: countsWords },
  ...FACTS,
  { ...{ key: "year", header: "Since", align: "end" }, value: ({ inServiceYear }) => inServiceYear },
  {
    ...{ key: "evidence", header: "Evidence" },
    value: ({ evidence }) => evidence,
    cell: ({ evidence }) => <EvidenceMark {...evidenceMark(evidence)} />,
  },
];
