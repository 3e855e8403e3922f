import { type ControllersInShort, controllersInShort } from "@/lib/view/lineControllers";
import type { RankedPlace } from "@/lib/view/linePlace";
import type { AgreedCost, RankedLine, RankingOf } from "@/lib/view/lineRanking";
import { type Flat, type PackColumns, type PackedRows, packRows, unpackRows } from "@/lib/view/packRows";

/** What the table of the ranking shows, sorts and filters of a line. */
export interface RankingRow
  extends Omit<RankedLine, "id" | "place" | "cost" | "controllers" | "assumed" | "scoreParts"> {
  readonly place: Pick<RankedPlace, "span" | "firstFive" | "fragile"> | null;
  readonly scoreParts: RankedLine["scoreParts"];
  readonly cost: AgreedCost;
  readonly control: ControllersInShort;
}

/** The ranking on its way to the table. */
export type PackedRanking = Omit<RankingOf<never>, "lines"> & { readonly rows: PackedRows };

type Numbers =
  | ("rankByLoss" | "rankByScore" | "score" | "baseLoss" | "shortageLoss" | "stopsPerYear" | "perHour")
  | ("stage" | "spares" | "repair" | "low" | "mid" | "high" | "firstFive")
  | ("lossMean" | "lossLow" | "lossHigh");
type Words =
  | ("code" | "name" | "site" | "fragile" | "worstStage")
  | ("empty" | "agreed" | "duties" | "control");

const COLUMNS: PackColumns<Numbers, Words> = {
  numbers: [
    ...(["rankByLoss", "rankByScore", "score", "baseLoss", "shortageLoss", "stopsPerYear"] as const),
    ...(["perHour", "stage", "spares", "repair", "low", "mid", "high", "firstFive"] as const),
    ...(["lossMean", "lossLow", "lossHigh"] as const),
  ],
  words: ["code", "name", "site", "fragile", "worstStage", "empty", "agreed", "duties", "control"],
};

/** Lines already flat: the same line is shown to many. */
const flatLines = new WeakMap<RankedLine, Flat<Numbers, Words>>();

function flatten(line: RankedLine): Flat<Numbers, Words> {
  const flat = flatLines.get(line) ?? flattened(line);
  flatLines.set(line, flat);
  return flat;
}

function flattened(line: RankedLine): Flat<Numbers, Words> {
  const { place, stopLoss, cost } = line;
  const { rankByLoss, rankByScore, score, baseLoss, shortageLoss, stopsPerYear, scoreParts } = line;
  return {
    ...{ rankByLoss, rankByScore, score, baseLoss, shortageLoss, stopsPerYear, ...scoreParts },
    perHour: cost.perHour,
    ...{ low: place?.span.low ?? null, mid: place?.span.mid ?? null, high: place?.span.high ?? null },
    firstFive: place?.firstFive ?? null,
    lossMean: stopLoss?.mean ?? null,
    ...{ lossLow: stopLoss?.low ?? null, lossHigh: stopLoss?.high ?? null },
    ...{
      code: line.code,
      name: line.name,
      worstStage: line.worstStage,
      fragile: place?.fragile ? "yes" : "",
    },
    site: JSON.stringify([line.siteCode, line.siteName]),
    empty: JSON.stringify([line.depletionP80, line.depletionPart]),
    agreed: JSON.stringify([cost.owner, cost.approvedOn, cost.validUntil, cost.evidence]),
    duties: JSON.stringify(line.duties),
    control: JSON.stringify(controllersInShort(line.controllers)),
  };
}

function unflatten(flat: Flat<Numbers, Words>, read: (text: string) => unknown): RankingRow {
  const [siteCode, siteName] = read(flat.site) as [string, string];
  const [depletionP80, depletionPart] = read(flat.empty) as [
    RankingRow["depletionP80"],
    RankingRow["depletionPart"],
  ];
  const agreed = read(flat.agreed) as [string | null, string | null, string | null, AgreedCost["evidence"]];
  const [owner, approvedOn, validUntil, evidence] = agreed;
  const { low, mid, high, firstFive, lossMean, lossLow, lossHigh } = flat;
  const known = (value: number | null) => value ?? Number.NaN;
  return {
    ...{ code: flat.code, name: flat.name, siteCode, siteName, depletionP80, depletionPart },
    ...{ rankByLoss: flat.rankByLoss, rankByScore: known(flat.rankByScore), score: known(flat.score) },
    ...{ baseLoss: flat.baseLoss, shortageLoss: flat.shortageLoss, stopsPerYear: known(flat.stopsPerYear) },
    scoreParts: { stage: known(flat.stage), spares: known(flat.spares), repair: known(flat.repair) },
    place:
      mid === null
        ? null
        : {
            span: { low: known(low), mid, high: known(high) },
            ...{ firstFive: known(firstFive), fragile: flat.fragile === "yes" },
          },
    stopLoss: lossMean === null ? null : { mean: lossMean, low: known(lossLow), high: known(lossHigh) },
    worstStage: flat.worstStage as RankingRow["worstStage"],
    cost: { perHour: flat.perHour, owner, approvedOn, validUntil, evidence },
    duties: read(flat.duties) as RankingRow["duties"],
    control: read(flat.control) as ControllersInShort,
  };
}

export function packRanking({ lines, ...rest }: RankingOf<RankedLine>): PackedRanking {
  return { ...rest, rows: packRows(lines.map(flatten), COLUMNS) };
}

export function unpackRanking({ rows, ...rest }: PackedRanking): RankingOf<RankingRow> {
  // The same word is read once, and its value shared.
  const values = new Map<string, unknown>();
  const read = (text: string) => {
    if (!values.has(text)) values.set(text, JSON.parse(text));
    return values.get(text);
  };
  return { ...rest, lines: unpackRows(rows, COLUMNS).map((flat) => unflatten(flat, read)) };
}
