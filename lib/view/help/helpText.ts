/** A page of this application that a help text sends the reader to. */
export interface HelpLink {
  readonly text: string;
  readonly href: string;
}

/** What a screen says of itself to somebody who sees it for the first time. */
export interface HelpText {
  /** Address of the page, with a star for each part that differs: `/lines/*`. */
  readonly page: string;
  readonly title: string;
  /** What the page is for. */
  readonly about: string;
  /** What its letters, spans and words mean, one thing a sentence. */
  readonly read: readonly string[];
  /** What to do next. */
  readonly next: readonly HelpLink[];
  /** Where its figures come from. */
  readonly from: string;
}
