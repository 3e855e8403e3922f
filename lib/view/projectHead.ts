/** What every page of one project says of it. */
export interface ProjectHead {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly status: string;
  /** ISO 4217. */
  readonly currency: string;
  /** IANA zone of its site. */
  readonly timeZone: string;
  readonly version: number;
}
