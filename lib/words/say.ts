import { type Locale, languageOf, numberStyleOf, PLAIN, READER } from "@/lib/kernel/locale";
import { type Catalogue, makeSpeaker, type Speaker } from "@/lib/words/speaker";

/** Gives the speaker of the present reader; null where English is read. Set on the server by `listen`. */
export const SPEAKER = Symbol.for("ebbline.speaker");

/** Where the script of a language leaves its catalogue for the browser. */
export const CATALOGUE = Symbol.for("ebbline.catalogue");

interface World {
  [READER]?: () => Locale;
  [SPEAKER]?: () => Speaker | null;
  [CATALOGUE]?: Catalogue;
}

const world = globalThis as World;

if (typeof document !== "undefined" && !world[SPEAKER]) readInBrowser(world, document.documentElement);

/** How the reader of a page reads that says nothing of it, and the words for it. */
export interface OwnWords {
  readonly locale: Locale;
  readonly catalogue: Catalogue;
}

/** Where a browser asks for them. */
export const OWN_WORDS = "own.json";

/** One person reads in a browser: the page says in which language and with which numbers. */
function readInBrowser(browser: World, page: HTMLElement): void {
  // The framework sends a page that is not there, or could not be made, without its head; all of it is made here.
  const own = page.lang === "" ? askForOwn() : null;
  const catalogue = browser[CATALOGUE] ?? own?.catalogue;
  const speaker = catalogue ? makeSpeaker(catalogue) : null;
  browser[SPEAKER] = () => speaker;
  browser[READER] = () => ({
    language: languageOf(page.lang.slice(0, 2)) ?? (own?.locale ?? PLAIN).language,
    numbers: numberStyleOf(page.dataset.numbers) ?? (own?.locale ?? PLAIN).numbers,
  });
}

/** Waited for, since the first element is made right after; null where the server does not answer. */
function askForOwn(): OwnWords | null {
  const request = new XMLHttpRequest();
  request.open("GET", `/api/words/${OWN_WORDS}`, false);
  try {
    request.send();
  } catch {
    return null;
  }
  return request.status === 200 ? (JSON.parse(request.responseText) as OwnWords) : null;
}

/** The speaker of whoever reads now; null where English is read. */
export const speaker = (): Speaker | null => world[SPEAKER]?.() ?? null;

/** An English text in the words of whoever reads now, for what no element shows: titles, mails, names of files. */
export const inWords = (text: string): string => speaker()?.(text) ?? text;
