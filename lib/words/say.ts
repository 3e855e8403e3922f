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

/** One person reads in a browser: the page says in which language and with which numbers. */
function readInBrowser(browser: World, page: HTMLElement): void {
  const catalogue = browser[CATALOGUE];
  const speaker = catalogue ? makeSpeaker(catalogue) : null;
  browser[SPEAKER] = () => speaker;
  browser[READER] = () => ({
    language: languageOf(page.lang.slice(0, 2)) ?? PLAIN.language,
    numbers: numberStyleOf(page.dataset.numbers) ?? PLAIN.numbers,
  });
}

/** The speaker of whoever reads now; null where English is read. */
export const speaker = (): Speaker | null => world[SPEAKER]?.() ?? null;

/** An English text in the words of whoever reads now, for what no element shows: titles, mails, names of files. */
export const inWords = (text: string): string => speaker()?.(text) ?? text;
