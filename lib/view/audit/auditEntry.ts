import type { AuditChange } from "@/lib/view/audit/auditChanges";

/** Kinds of thing that have a history of their own. */
export const AUDIT_THINGS = ["line", "part", "lot", "project", "axis", "machine", "plan"] as const;
export type AuditThing = (typeof AUDIT_THINGS)[number];

/** What is asked of the audit; what is left out narrows nothing. */
export interface AuditQuestion {
  readonly thing?: { readonly kind: AuditThing; readonly id: string } | undefined;
  /** Part of a person's name. */
  readonly who?: string | undefined;
  /** Before the colon of a deed. */
  readonly area?: string | undefined;
  readonly from?: string | undefined;
  readonly until?: string | undefined;
  /** Entries behind this one. */
  readonly after?: string | undefined;
}

/** One thing somebody did. */
export interface AuditLine {
  readonly id: string;
  /** RFC 3339, in UTC. */
  readonly at: string;
  /** Null is the installation itself. */
  readonly who: string | null;
  readonly byKey: string | null;
  readonly deed: string;
  readonly siteCode: string | null;
  /** What it was done to: code, number or name; null where it is gone or has none. */
  readonly what: { readonly label: string; readonly href: string | null } | null;
  /** Null: the reader may not see amounts there. */
  readonly changes: readonly AuditChange[] | null;
  readonly why: string | null;
}

export interface AuditPage {
  readonly lines: readonly AuditLine[];
  /** Where the next page begins; null on the last. */
  readonly next: string | null;
  /** What the history is of; null where no thing was asked for. */
  readonly of: { readonly label: string; readonly href: string } | null;
}
