import { foldText } from "@/lib/intake/foldText";

/** Names of the months in English, German, Polish (both cases), Swedish, Spanish, French and Italian, without accents. */
const MONTHS: readonly (readonly string[])[] = [
  "january|januar|jaenner|styczen|stycznia|januari|enero|janvier|gennaio",
  "february|februar|luty|lutego|februari|febrero|fevrier|febbraio",
  "march|marz|maerz|mrz|marzec|marca|mars|marzo",
  "april|kwiecien|kwietnia|abril|avril|aprile",
  "may|mai|maj|maja|mayo|maggio",
  "june|juni|czerwiec|czerwca|junio|juin|giugno",
  "july|juli|lipiec|lipca|julio|juillet|luglio",
  "august|sierpien|sierpnia|augusti|agosto|aout",
  "september|sept|wrzesien|wrzesnia|septiembre|septembre|settembre",
  "october|oktober|pazdziernik|pazdziernika|octubre|octobre|ottobre",
  "november|listopad|listopada|noviembre|novembre",
  "december|dezember|grudzien|grudnia|diciembre|decembre|dicembre",
].map((names) => names.split("|"));

/** The month a name stands for, 1 to 12, or null. Three letters are enough; what only begins like a month is none. */
export function monthOfName(name: string): number | null {
  const folded = foldText(name);
  if (folded.length < 3) return null;
  const index = MONTHS.findIndex((names) => names.some((month) => month.startsWith(folded)));
  return index < 0 ? null : index + 1;
}
