import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { InstalledInput, LineResult, Span } from "@/lib/risk/evaluation";
import { type DatedFact, type NoticeDates, oddDates, overwrittenDates } from "@/lib/view/noticeDates";

/** A part of the notice, before and after, at the reader's sites. */
export interface PreviewedPart {
  readonly id: string;
  readonly number: string;
  readonly family: string | null;
  readonly before: DatedFact | null;
  readonly after: NoticeDates;
  /** Source the new statement would carry. */
  readonly source: string;
  readonly byFamily: boolean;
  /** Known: the step is on record already. */
  readonly successor: { readonly number: string; readonly known: boolean } | null;
  /** Pieces that work when needed. */
  readonly usable: number;
  readonly stageBefore: SupplyStage;
  readonly stageAfter: SupplyStage;
}

interface PreviewLine {
  readonly id: string;
  readonly code: string;
  readonly siteCode: string;
}

type Loss = Pick<LineResult, "lineId" | "stopLoss">;

/** What a preview is put together from. */
export interface PreviewInput {
  readonly asOf: IsoDate;
  readonly parts: readonly PreviewedPart[];
  readonly plan: {
    readonly empty: readonly string[];
    readonly withoutSuccessor: readonly string[];
    readonly orderByOn: IsoDate | null;
    readonly basis: string;
  };
  readonly everySite: boolean;
  readonly lines: readonly PreviewLine[];
  readonly installed: readonly InstalledInput[];
  readonly before: readonly Loss[];
  readonly after: readonly Loss[];
}

/** Units of the parts on a line. */
export interface UnitsOnLine {
  readonly siteCode: string;
  readonly code: string;
  readonly units: number;
}

/** A line whose loss or place moves; places count among the reader's lines. */
export interface MovedLine {
  readonly code: string;
  readonly before: Span;
  readonly after: Span;
  readonly placeBefore: number;
  readonly placeAfter: number;
}

export interface NoticePreview {
  readonly asOf: IsoDate;
  readonly basis: string;
  readonly parts: readonly (PreviewedPart & { readonly units: number })[];
  readonly sites: readonly { readonly code: string; readonly units: number }[];
  readonly lines: readonly UnitsOnLine[];
  readonly units: number;
  readonly orderByOn: IsoDate | null;
  readonly odd: readonly string[];
  readonly empty: readonly string[];
  readonly withoutSuccessor: readonly string[];
  /** Stop loss a year of the reader's lines, EUR. */
  readonly lossBefore: number;
  readonly lossAfter: number;
  readonly moved: readonly MovedLine[];
  readonly everySite: boolean;
}

const LINES_SHOWN = 12;
/** EUR a year; less is a move of days nobody would see. */
const LEAST_MOVE = 1;

/** What a notice would change, as a page shows it. */
export function noticePreview(input: PreviewInput): NoticePreview {
  const ids = new Set(input.parts.map(({ id }) => id));
  const own = input.installed.filter(({ poolId }) => ids.has(poolId));
  const unitsOf = (rows: readonly InstalledInput[]) => rows.reduce((sum, { units }) => sum + units, 0);
  const lines = input.lines
    .map(({ id, code, siteCode }) => ({
      ...{ siteCode, code, units: unitsOf(own.filter(({ lineId }) => lineId === id)) },
    }))
    .filter(({ units }) => units > 0);
  const codes = [...new Set(lines.map(({ siteCode }) => siteCode))].sort();
  return {
    ...{ asOf: input.asOf, everySite: input.everySite, ...input.plan },
    parts: input.parts.map((part) => ({
      ...part,
      units: unitsOf(own.filter((row) => row.poolId === part.id)),
    })),
    sites: codes.map((code) => ({
      code,
      units: lines.reduce((sum, line) => sum + (line.siteCode === code ? line.units : 0), 0),
    })),
    ...{ lines, units: unitsOf(own) },
    odd: [...new Set(input.parts.flatMap(({ after }) => oddDates(after)))],
    lossBefore: totalOf(input.before),
    lossAfter: totalOf(input.after),
    moved: movedLines(input),
  };
}

/** Days on record that give way, those alike for several parts together. */
export function overwrittenTogether(parts: readonly Pick<PreviewedPart, "number" | "before" | "after">[]) {
  const found = new Map<string, ReturnType<typeof overwrittenDates>[number] & { numbers: string[] }>();
  for (const { number, before, after } of parts)
    for (const one of overwrittenDates(before, after)) {
      const key = JSON.stringify(one);
      const known = found.get(key);
      if (known) known.numbers.push(number);
      else found.set(key, { ...one, numbers: [number] });
    }
  return [...found.values()];
}

const totalOf = (lines: readonly Loss[]) =>
  lines.reduce((sum, { stopLoss }) => sum + (stopLoss?.mean ?? 0), 0);

function placesOf(lines: readonly Loss[]): Map<string, number> {
  const known = lines.filter(({ stopLoss }) => stopLoss !== null);
  const sorted = [...known].sort((a, b) => (b.stopLoss?.mean ?? 0) - (a.stopLoss?.mean ?? 0));
  return new Map(sorted.map(({ lineId }, i) => [lineId, i + 1]));
}

/** Lines whose loss moves, the largest move first. */
function movedLines({ lines, before, after }: PreviewInput): MovedLine[] {
  const [old, now] = [placesOf(before), placesOf(after)];
  const later = new Map(after.map(({ lineId, stopLoss }) => [lineId, stopLoss]));
  const codes = new Map(lines.map(({ id, code }) => [id, code]));
  const moves = before.flatMap(({ lineId, stopLoss }): MovedLine[] => {
    const next = later.get(lineId);
    if (!stopLoss || !next || Math.abs(next.mean - stopLoss.mean) < LEAST_MOVE) return [];
    const places = { placeBefore: old.get(lineId) ?? 0, placeAfter: now.get(lineId) ?? 0 };
    return [{ code: codes.get(lineId) ?? "", before: stopLoss, after: next, ...places }];
  });
  const size = (line: MovedLine) => Math.abs(line.after.mean - line.before.mean);
  return moves.sort((a, b) => size(b) - size(a)).slice(0, LINES_SHOWN);
}
