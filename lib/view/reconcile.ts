import type { Deduction } from "@/lib/risk/evaluation";
import { percent } from "@/lib/view/chance";
import { count, quantity, significant } from "@/lib/view/number";
import type { PartLot } from "@/lib/view/partDossier";
import { day } from "@/lib/view/time";

/** What one reason takes off the book of a site, with the lots it comes from. */
export interface SiteDeduction {
  readonly reason: Deduction["reason"];
  /** Pieces, >= 0; of a lot not counted none can be said. */
  readonly pieces: number;
  readonly lots: readonly PartLot[];
}

function reasonOf({ state, quantity: pieces }: PartLot): Deduction["reason"] {
  if (pieces === null) return "not_counted";
  return state === "usable" ? "storage" : state;
}

/**
 * What stands between the book of one site and what is usable there, reason by reason, each with its lots.
 *
 * The deductions and the usable pieces add up to the book.
 */
export function deductionsOf(lots: readonly PartLot[]): SiteDeduction[] {
  const reasons = new Map<Deduction["reason"], { pieces: number; lots: PartLot[] }>();
  for (const lot of lots) {
    const off = lot.quantity === null ? 0 : lot.quantity - lot.usable;
    if (lot.quantity !== null && off === 0) continue;
    const own = reasons.get(reasonOf(lot)) ?? { pieces: 0, lots: [] };
    reasons.set(reasonOf(lot), { pieces: own.pieces + off, lots: [...own.lots, lot] });
  }
  return [...reasons].map(([reason, own]) => ({ reason, ...own })).sort((a, b) => b.pieces - a.pieces);
}

/** A lot in its deduction: `R3-014 B2: 6 pieces, last powered 20 May 2016, works with 70 %`. */
export function lotInDeduction({ bin, revision, quantity: pieces, lastPoweredOn, works }: PartLot): string {
  const name = `${bin}${revision === "" ? "" : ` ${revision}`}`;
  if (pieces === null) return `${name}: not counted`;
  const chance = works === 0 ? "not counted on" : `each works with ${percent(works)}`;
  return `${name}: ${count(pieces, "piece")}, last powered ${day(lastPoweredOn)}, ${chance}`;
}

/** Pieces taken off: `−8`, `−0.6`; nothing can be said of a lot nobody counted. */
export function takenOff({ reason, pieces }: SiteDeduction): string {
  if (reason === "not_counted") return "not known";
  return `\u2212${pieces < 0.1 ? significant(pieces, 1) : quantity(pieces)}`;
}
