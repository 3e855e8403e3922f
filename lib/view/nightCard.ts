import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { StockState } from "@/lib/spares/usableCount";
import type { MachineDossier, PartLabel } from "@/lib/view/machine";
import { placesOf } from "@/lib/view/machine";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

/** A lot of spares on a shelf. */
export interface CardLot {
  readonly siteCode: string;
  readonly siteName: string;
  readonly bin: string;
  readonly revision: string;
  readonly state: StockState;
  /** Null is not counted. */
  readonly quantity: number | null;
  /** Chance that one of its pieces works, in [0, 1]. */
  readonly works: number;
}

/** Shelves of a part as the reader may know them. */
export interface CardStock {
  /** Lots at sites the reader may see. */
  readonly lots: readonly CardLot[];
  /** Pieces expected to work at all other sites; null when the reader sees all. */
  readonly unnamed: number | null;
}

/** A part that may stand in, one way only. */
export interface CardAlternate extends PartLabel {
  readonly maker: string;
  /** What must hold; null is not recorded. */
  readonly condition: string | null;
  readonly stock: CardStock;
}

/** A part of the machine, with what there is in its stead. */
export interface CardPart extends PartLabel {
  readonly maker: string;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly stock: CardStock;
  readonly alternates: readonly CardAlternate[];
}

export type BackupKind = "program" | "parameters" | "operator_panel";

export interface CardBackup {
  readonly id: string;
  readonly kind: BackupKind;
  readonly takenOn: IsoDate;
  readonly keptAt: string;
  readonly verifiedOn: IsoDate | null;
  readonly sourceAvailable: boolean | null;
}

export interface CardContact {
  readonly id: string;
  readonly role: string;
  readonly phone: string;
  readonly hours: string;
  readonly note: string | null;
}

/** What a breakdown at night needs of one machine. */
export interface NightCard {
  readonly machine: MachineDossier;
  readonly parts: readonly CardPart[];
  /** Newest first. */
  readonly backups: readonly CardBackup[];
  /** Those of the line before those of the whole site. */
  readonly contacts: readonly CardContact[];
  /** Hours a spare from another site takes; an assumption. */
  readonly transferHours: number;
  /** Instant the card was made. */
  readonly madeAt: string;
}

const BACKUP_KINDS = {
  program: "Program",
  parameters: "Drive parameters",
  operator_panel: "Operator panel",
} as const satisfies Record<BackupKind, string>;

/** What was backed up, in words. */
export function backupKindName(kind: BackupKind): string {
  return BACKUP_KINDS[kind];
}

export const backupKinds = Object.keys(BACKUP_KINDS) as BackupKind[];

/** How old a backup is and whether it was ever put back. */
export function backupWords(backup: CardBackup, asOf: IsoDate): string {
  const { kind, takenOn, verifiedOn, sourceAvailable } = backup;
  return [
    `taken ${day(takenOn)}, ${distance(takenOn, asOf)}`,
    verifiedOn === null ? "never put back to try it" : `put back and ran ${day(verifiedOn)}`,
    ...(sourceAvailable === false ? ["NO SOURCE: the copy can be loaded, not edited"] : []),
    ...(sourceAvailable === null && kind === "program" ? ["source not known"] : []),
  ].join("; ");
}

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);

/** Lots that may be fitted as they are, by bin. */
export function fitLots(stock: CardStock): CardLot[] {
  return stock.lots.filter(({ state, quantity }) => state === "usable" && quantity !== 0);
}

/** Pieces on the books that may not be fitted as they are. */
export function unfitPieces(lots: readonly CardLot[]): number {
  return sumOf(lots.map(({ state, quantity }) => (state === "usable" ? 0 : (quantity ?? 0))));
}

/** Below this chance a bin at another site is not worth the way without a word of warning; the product's own choice. */
const DOUBTFUL_BELOW = 0.9;

const chanceWords = (works: number) => ` (${Math.round(works * 100)} % to work)`;

/** One bin in words: `bin E1-04: 3 rev. B2 (92 % to work)`. */
export function binWords({ bin, revision, quantity, works }: CardLot): string {
  const pieces = quantity === null ? "not counted" : plainNumber(quantity);
  const level = revision === "" ? "" : ` rev. ${revision}`;
  return `bin ${bin}: ${pieces}${level}${works < 1 ? chanceWords(works) : ""}`;
}

/** Bins of other sites, site by site: `KAR 1 in R5-090; OST 2 in R5-089, 1 in R6-001 (40 % to work)`. */
export function siteWords(lots: readonly CardLot[]): string {
  const codes = [...new Set(lots.map(({ siteCode }) => siteCode))];
  const ofSite = (code: string) =>
    lots
      .filter(({ siteCode }) => siteCode === code)
      .map(({ bin, quantity, works }) => {
        const pieces = quantity === null ? "an uncounted number" : plainNumber(quantity);
        return `${pieces} in ${bin}${works < DOUBTFUL_BELOW ? chanceWords(works) : ""}`;
      })
      .join(", ");
  return codes.map((code) => `${code} ${ofSite(code)}`).join("; ");
}

/** Lots at one site and at the rest of those the reader may see. */
export function lotsByPlace(
  lots: readonly CardLot[],
  siteCode: string,
): { readonly here: CardLot[]; readonly there: CardLot[] } {
  return {
    here: lots.filter((lot) => lot.siteCode === siteCode),
    there: lots.filter((lot) => lot.siteCode !== siteCode),
  };
}

/** Designations of the machine's places that hold a part. */
export function placesWith(machine: MachineDossier, partId: string): string[] {
  return placesOf(machine)
    .filter(({ part }) => part?.id === partId)
    .map(({ designation, panel }) =>
      panel === null ? designation : `${designation} (${panel.designation})`,
    );
}
