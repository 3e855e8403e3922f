import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

/** The letters of the screen, in the alphabets a site's names may need. */
const ALPHABETS = ["latin", "latin-ext", "greek", "cyrillic"] as const;
const WEIGHTS = [400, 600] as const;
/** Beside the server that runs, as beside the sources. */
const FOLDER = "node_modules/@fontsource/source-sans-3/files";

// Words of the trade and part numbers are not parted.
Font.registerHyphenationCallback((word) => [word]);

let registered: string[] | null = null;

/** Families of letters, the first that has a letter sets it. */
export function paperFonts(): string[] {
  registered ??= ALPHABETS.map(register);
  return registered;
}

function register(alphabet: string): string {
  const family = `Paper ${alphabet}`;
  for (const fontWeight of WEIGHTS) {
    const file = `source-sans-3-${alphabet}-${fontWeight}-normal.woff`;
    Font.register({ family, src: join(process.cwd(), FOLDER, file), fontWeight });
  }
  return family;
}
