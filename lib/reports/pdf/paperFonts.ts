import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

/** The letters of the screen, in the alphabets a site's names may need. */
const ALPHABETS = ["latin", "latin-ext", "greek", "cyrillic"] as const;
const WEIGHTS = [400, 600] as const;
/** Beside the server that runs, as beside the sources. */
const FOLDER = "node_modules/@fontsource/source-sans-3/files";

/** Families of letters, the first that has a letter sets it. Loaded before they set anything: `loadPaperFonts`. */
export const PAPER_FONTS = ALPHABETS.map((alphabet) => `Paper ${alphabet}`);

// Words of the trade and part numbers are not parted.
Font.registerHyphenationCallback((word) => [word]);

let loaded: Promise<void> | null = null;

/**
 * Loads the letters, once for the process.
 *
 * Each letter is asked for by its character before any page is set: a font hands out one object for a letter, and one
 * first met as a part of another ("−" within "±") would carry no character, so that later papers could be neither
 * searched nor copied nor read aloud at that letter.
 */
export function loadPaperFonts(): Promise<void> {
  loaded ??= Promise.all(
    ALPHABETS.flatMap((alphabet, i) => WEIGHTS.map((weight) => load(alphabet, i, weight))),
  ).then(() => undefined);
  return loaded;
}

async function load(alphabet: string, i: number, fontWeight: (typeof WEIGHTS)[number]) {
  const fontFamily = PAPER_FONTS[i] ?? "";
  const file = `source-sans-3-${alphabet}-${fontWeight}-normal.woff`;
  Font.register({ family: fontFamily, src: join(process.cwd(), FOLDER, file), fontWeight });
  await Font.load({ fontFamily, fontWeight });
  const letters = Font.getFont({ fontFamily, fontWeight })?.data;
  if (letters && "characterSet" in letters)
    for (const character of letters.characterSet) letters.glyphForCodePoint(character);
}
