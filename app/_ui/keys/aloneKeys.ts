/** Name of the cookie that keeps a person's choice on a device. */
const COOKIE = "alone-keys";
const OFF = `${COOKIE}=off`;
const ONE_YEAR_SECONDS = 31_536_000;

/** Whether keys pressed alone, such as `/` and `?`, do something; some voices and hands press keys they do not mean. */
export function aloneKeysWork(): boolean {
  return !document.cookie.split("; ").includes(OFF);
}

/** Keeps the choice on this device; it holds at once. */
export function setAloneKeys(work: boolean): void {
  const age = work ? 0 : ONE_YEAR_SECONDS;
  // The Cookie Store API is missing on plain-http addresses of a plant network.
  Object.assign(document, { cookie: `${OFF}; path=/; max-age=${age}; samesite=lax` });
}

/** Whether a key was pressed alone and is meant as a shortcut: not for a field, not for the browser, not switched off. */
export function isAlone(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const target = event.target instanceof HTMLElement ? event.target : null;
  const isTyping = target?.closest("input, textarea, select, [contenteditable]") ?? null;
  return isTyping === null && aloneKeysWork();
}
