import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Font } from "@react-pdf/renderer";
import { fontOfWeight } from "@/lib/reports/letters/fontOfWeight";

/** The letters of the screen, in the alphabets a site's names may need. */
const ALPHABETS = ["latin", "latin-ext", "greek", "cyrillic"] as const;
const WEIGHTS = [400, 600] as const;
/** Beside the server that runs, as beside the sources. */
const FOLDER = "node_modules/@fontsource-variable/source-sans-3/files";

let registered: string[] | null = null;

/** Families of letters, the first that has a letter sets it. Read once, since unpacking takes a while. */
export function paperFonts(): string[] {
  registered ??= ALPHABETS.map(register);
  return registered;
}

function register(alphabet: string): string {
  const family = `Paper ${alphabet}`;
  const file = join(process.cwd(), FOLDER, `source-sans-3-${alphabet}-wght-normal.woff2`);
  const packed = readFileSync(file);
  for (const fontWeight of WEIGHTS) {
    const font = fontOfWeight(packed, { weight: fontWeight, name: `Ebbline-${alphabet}-${fontWeight}` });
    const src = `data:font/ttf;base64,${font.toString("base64")}`;
    Font.register({ family, src, fontWeight });
  }
  return family;
}
