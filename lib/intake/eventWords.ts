import { foldText } from "@/lib/intake/foldText";

export type TextLanguage = "English" | "German" | "Polish" | "Spanish" | "French" | "Italian" | "Swedish";

/** A word of a work order's text and what it probably tells; a person confirms it before it is used. */
export interface TextHint {
  readonly field: "kind" | "itemClass";
  /** The word as it stands in the text, folded. */
  readonly word: string;
  readonly meaning: string;
  readonly language: TextLanguage;
}

type Stems = Readonly<Record<TextLanguage, string>>;

interface Hinted {
  readonly field: TextHint["field"];
  readonly meaning: string;
  readonly stems: Stems;
}

/**
 * Beginnings of words, folded, parted by "|"; a blank joins the words of a phrase. Common practice of work orders in
 * these languages, no source. Phrases that deny a fault stand first, since they hold the word for it.
 */
const HINTS: readonly Hinted[] = [
  {
    field: "kind",
    meaning: "no_fault_found",
    stems: {
      English: "no fault|nff|not reproducible",
      German: "kein fehler|ohne befund|nicht reproduzierbar",
      Polish: "brak usterki|nie stwierdzono|bez usterki",
      Spanish: "sin fallo|sin falla|sin averia",
      French: "sans defaut|aucun defaut|aucune panne",
      Italian: "nessun guasto|nessun difetto|senza difetti",
      Swedish: "inget fel|utan anmarkning",
    },
  },
  {
    field: "kind",
    meaning: "failure",
    stems: {
      English: "failed|failure|fault|broken|burnt|defective|tripped|dead",
      German: "defekt|ausgefallen|ausfall|storung|gestort|durchgebrannt|kaputt",
      Polish: "awari|uszkodz|usterk|spalon|zepsut",
      Spanish: "fallo|falla|averi|quemad|danad",
      French: "panne|defaut|defectueu|grille|hors service",
      Italian: "guast|avari|difett|bruciat|rott",
      Swedish: "fel|haveri|trasig|sonder",
    },
  },
  {
    field: "kind",
    meaning: "removal",
    stems: {
      English: "replaced|exchanged|swapped|changed|renewed",
      German: "getauscht|ausgetauscht|ersetzt|gewechselt|erneuert|tausch|austausch",
      Polish: "wymian|wymien",
      Spanish: "cambio|cambiad|sustitu|reemplaz",
      French: "remplac|echang|change",
      Italian: "sostitu|cambiat|cambio",
      Swedish: "byte|bytt|utbytt|byttes",
    },
  },
  {
    field: "itemClass",
    meaning: "drive",
    stems: {
      English: "drive|servo amp|amplifier|inverter",
      German: "umrichter|servoregler|servoumrichter|antriebsregler|verstarker",
      Polish: "naped|serwonaped|falownik|wzmacniacz|serwowzmacniacz",
      Spanish: "variador|accionamiento|servoamplificador|drive",
      French: "variateur|servovariateur",
      Italian: "azionament|servoazionament",
      Swedish: "driv|servodrift|omriktare|servoforstarkare",
    },
  },
  {
    field: "itemClass",
    meaning: "motor",
    stems: {
      English: "motor|servomotor",
      German: "motor|servomotor",
      Polish: "silnik|serwosilnik",
      Spanish: "motor|servomotor",
      French: "moteur|servomoteur",
      Italian: "motore|servomotore",
      Swedish: "motor|servomotor",
    },
  },
  {
    field: "itemClass",
    meaning: "power_supply",
    stems: {
      English: "power supply|psu",
      German: "netzteil|stromversorgung|netzgerat",
      Polish: "zasilacz",
      Spanish: "fuente",
      French: "alimentation",
      Italian: "alimentator",
      Swedish: "nataggregat|stromforsorjning",
    },
  },
  {
    field: "itemClass",
    meaning: "controller",
    stems: {
      English: "plc|controller|cpu",
      German: "steuerung|sps",
      Polish: "sterownik",
      Spanish: "automata|controlador",
      French: "automate",
      Italian: "controllore",
      Swedish: "styrsystem|styrenhet",
    },
  },
];

/**
 * What the words of a work order's text probably tell: what happened, and to what class of item. One hint a field: the
 * first kind found in the order above; no class where words of two stand in one text.
 */
export function hintsOf(text: string): TextHint[] {
  const words = foldText(text).split(" ");
  const kind = HINTS.filter(({ field }) => field === "kind").flatMap((hinted) => findHint(words, hinted));
  const classes = HINTS.filter(({ field }) => field === "itemClass").flatMap((h) => findHint(words, h));
  return [...kind.slice(0, 1), ...(classes.length === 1 ? classes : [])];
}

function findHint(words: readonly string[], { field, meaning, stems }: Hinted): TextHint[] {
  for (const [language, list] of Object.entries(stems) as [TextLanguage, string][])
    for (const stem of list.split("|")) {
      const word = findStem(words, stem.split(" "));
      if (word !== null) return [{ field, word, meaning, language }];
    }
  return [];
}

/** The words that begin with the stem's words, one after the other; short stems must be the whole word. */
function findStem(words: readonly string[], stem: readonly string[]): string | null {
  const fits = (word: string | undefined, part: string) =>
    word !== undefined && (part.length < 5 ? word === part : word.startsWith(part));
  const index = words.findIndex((_, at) => stem.every((part, step) => fits(words[at + step], part)));
  return index < 0 ? null : words.slice(index, index + stem.length).join(" ");
}
