/** Something as typed, and the version of the stored one it was typed over. */
export interface Draft<T> {
  readonly entry: T;
  readonly version: number;
}

/** What is kept on this device under a name and the server does not have; null is nothing. */
export function readDraft<T>(name: string): Draft<T> | null {
  const text = localStorage.getItem(name);
  return text === null ? null : (JSON.parse(text) as Draft<T>);
}

export function keepDraft<T>(name: string, draft: Draft<T>): void {
  localStorage.setItem(name, JSON.stringify(draft));
}

export function dropDraft(name: string): void {
  localStorage.removeItem(name);
}

/** Names of what was typed on this device and not sent; how parts of a page were left folded is nothing typed. */
function draftNames(): string[] {
  return Object.keys(localStorage).filter(
    (name) => name.startsWith("ebbline ") && !name.startsWith("ebbline fold "),
  );
}

/** How many entries lie on this device that the server does not have. */
export const countDrafts = (): number => draftNames().length;

/** Throws all of them away: whoever signs in next must not find them. */
export function dropAllDrafts(): void {
  for (const name of draftNames()) dropDraft(name);
}
