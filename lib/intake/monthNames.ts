import { foldText } from "@/lib/intake/foldText";

/** First letters of month names in English, German, Polish, Swedish and Spanish, without accents. */
const MONTH_STEMS: readonly string[] = [
  "jan|sty|ene",
  "feb|lut",
  "mar|mrz|maerz",
  "apr|kwi|abr",
  "may|mai|maj|may",
  "jun|cze",
  "jul|lip",
  "aug|sie|ago",
  "sep|wrz|set",
  "oct|okt|paz",
  "nov|lis",
  "dec|dez|gru|dic",
];

/** The month a name stands for, 1 to 12, or null. Three letters are enough. */
export function monthOfName(name: string): number | null {
  const folded = foldText(name);
  const index = MONTH_STEMS.findIndex((stems) => stems.split("|").some((stem) => folded.startsWith(stem)));
  return folded.length >= 3 && index >= 0 ? index + 1 : null;
}
