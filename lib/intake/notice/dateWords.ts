import type { NoticeDateKind, SpanUnit } from "@/lib/intake/notice/noticeDate";

/** Words beside a date that say which one it is, in English and German; more than one word before less. */
export const DATE_WORDS: readonly { readonly kind: NoticeDateKind; readonly words: RegExp }[] = [
  {
    kind: "lastOrderOn",
    words:
      /(?:last|final)[- ](?:time[- ])?(?:orders?|ordering|buys?|purchases?)|orders? (?:\w+ ){0,4}?(?:accepted|taken|placed|possible|received|until|by|deadline)|letzte[rnm]? Bestell\w*|Bestellungen (?:\w+ )?bis/giu,
  },
  {
    kind: "lastShipOn",
    words:
      /(?:last|final)[- ](?:time[- ])?(?:ship\w*|deliver\w*)|(?:deliver(?:y|ies)|shipments?|shipping|ships?|shipped|delivered) (?:\w+ ){0,3}?(?:until|by|ends?)|letzte[rnm]? Liefer\w*|Lieferungen? (?:\w+ )?bis/giu,
  },
  { kind: "repairUntilOn", words: /repair\w*|exchange service|Reparatur\w*|Instandsetzung\w*/giu },
  {
    kind: "noticeOn",
    words:
      /notice|notification|announce\w*|bulletin|issued?|publi(?:shed|cation)|dated|(?<!\p{L}[ -])Date\s*:|Abkündigung\w*|Mitteilung\w*|Datum/giu,
  },
];

const COUNT_WORDS = (
  "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen " +
  "eighteen nineteen twenty"
).split(" ");
const GERMAN_COUNTS = "ein zwei drei vier fünf sechs sieben acht neun zehn elf zwölf".split(" ");

/** A small count in digits or words; null is none. */
export function countOf(word: string): number | null {
  const text = word.toLowerCase();
  if (/^\d{1,3}$/.test(text)) return Number(text);
  if (/^(?:an?|eine[mnrs]?)$/.test(text)) return 1;
  const [english, german] = [COUNT_WORDS.indexOf(text), GERMAN_COUNTS.indexOf(text)];
  return english >= 0 ? english + 1 : german >= 0 ? german + 1 : null;
}

/** The unit a word of time stands for. */
export function unitOf(word: string): SpanUnit {
  const text = word.toLowerCase();
  if (text.startsWith("d") || text.startsWith("tag")) return "day";
  if (text.startsWith("w")) return "week";
  return text.startsWith("m") ? "month" : "year";
}
