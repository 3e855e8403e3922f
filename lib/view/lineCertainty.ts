import { FIRM_SHARE, placeRange } from "@/lib/view/linePlace";
import type { RankedLine } from "@/lib/view/lineRanking";

type Placed = RankedLine & { readonly rankByLoss: number; readonly place: NonNullable<RankedLine["place"]> };

function placed(lines: readonly RankedLine[]): Placed[] {
  return lines
    .flatMap((line) =>
      line.place === null || line.rankByLoss === null
        ? []
        : [{ ...line, rankByLoss: line.rankByLoss, place: line.place }],
    )
    .sort((a, b) => a.rankByLoss - b.rankByLoss);
}

const isFirm = ({ place }: Placed) => place.beforeNext !== null && place.beforeNext >= FIRM_SHARE;

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

const LEAST = `${FIRM_SHARE * 20} of 20`;

/** Runs of places between two firm cuts; a run of one is a place of its own. */
function runsOf(lines: readonly Placed[]): { low: number; high: number }[] {
  const runs: { low: number; high: number }[] = [];
  let low: number | null = null;
  lines.forEach((line, i) => {
    low ??= line.rankByLoss;
    if (!isFirm(line) && i < lines.length - 1) return;
    runs.push({ low, high: line.rankByLoss });
    low = null;
  });
  return runs;
}

/** Which places of the whole group stand firm and which are a tie, in words. */
function groupCertainty(lines: readonly Placed[]): string {
  const firm = lines.filter(isFirm).map(({ rankByLoss }) => String(rankByLoss));
  const ties = runsOf(lines).filter(({ low, high }) => low < high);
  const tied =
    ties.length === 0 ? "" : `Each close to a tie with the next: places ${listed(ties.map(placeRange))}.`;
  if (firm.length === 0) return `No neighbour is firmly before the next. ${tied}`.trim();
  const places = firm.length === 1 ? "place" : "places";
  return `Firm: the cut after ${places} ${listed(firm)}, where at least ${LEAST} draws keep the two neighbours in this order. ${tied}`.trim();
}

function ownCertainty(lines: readonly Placed[]): string {
  const firm = lines.filter(isFirm).map(({ code }) => code);
  const loose = lines
    .filter((line) => !isFirm(line) && line.place.beforeNext !== null)
    .map(({ code }) => code);
  const first =
    firm.length === 0
      ? ""
      : `Firmly before the next line of the group (${LEAST} draws or more): ${listed(firm)}.`;
  const second = loose.length === 0 ? "" : `Close to a tie with the next: ${listed(loose)}.`;
  return `${first} ${second}`.trim();
}

/** Which of the ranks are solid and which are a tie; null when no line has money. */
export function rankCertainty(lines: readonly RankedLine[], wholeGroup: boolean): string | null {
  const drawn = placed(lines);
  if (drawn.length === 0) return null;
  return wholeGroup ? groupCertainty(drawn) : ownCertainty(drawn);
}

/** How the spans were made: `400 draws, seed 20261130`; null when no line has money. */
export function drawnWords(lines: readonly RankedLine[]): string | null {
  const place = lines.find((line) => line.place !== null)?.place;
  return place ? `${place.draws} draws, seed ${place.seed}` : null;
}

/** Lines whose place one unknown alone moves by five or more, the dearest first. */
export function fragileLines(lines: readonly RankedLine[]): readonly Placed[] {
  return placed(lines).filter(({ place }) => place.fragile);
}
