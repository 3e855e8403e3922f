import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";

/** A duty with a day: for people's safety, or by law. */
export type ObligationKind = "safety" | "legal";

/** A date that binds whatever the loss is. */
export interface Obligation {
  readonly id: string;
  readonly siteId: string;
  readonly siteCode: string;
  /** Null concerns the whole site. */
  readonly line: { readonly id: string; readonly code: string } | null;
  readonly kind: ObligationKind;
  /** What must be done. */
  readonly title: string;
  readonly dueOn: IsoDate;
  /** Where the duty comes from. */
  readonly source: string;
  readonly owner: string | null;
  readonly evidence: Evidence;
  readonly recordedOn: IsoDate;
  /** Null is open on the day looked at. */
  readonly doneOn: IsoDate | null;
  readonly version: number;
}

/** A site a duty can be recorded at, with its lines. */
export interface ObligationPlace {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly lines: readonly { readonly id: string; readonly code: string; readonly name: string }[];
}

/** What a row of the ranking shows of a duty. */
export type DutyMark = Pick<Obligation, "kind" | "title" | "dueOn">;

const WORDS = {
  safety: { letter: "S", name: "Safety date" },
  legal: { letter: "L", name: "Legal date" },
} as const satisfies Record<ObligationKind, { letter: string; name: string }>;

/** Letter and name of a kind of duty. */
export function obligationWords(kind: ObligationKind): { readonly letter: string; readonly name: string } {
  return WORDS[kind];
}

/** A duty this near is shown beside money wherever lines are compared; the product's own choice. */
const NEAR_MONTHS = 24;

/** Whether a duty is open and due within 24 months, or overdue. */
export function isNear({ dueOn, doneOn }: Pick<Obligation, "dueOn" | "doneOn">, asOf: IsoDate): boolean {
  return doneOn === null && dueOn <= addMonths(asOf, NEAR_MONTHS);
}
