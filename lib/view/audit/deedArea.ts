/** What may be done in one area, in words: the part of a deed behind its colon, and what it says. */
export interface DeedArea {
  readonly title: string;
  readonly deeds: Readonly<Record<string, string>>;
}
