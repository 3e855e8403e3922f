/** What a cell of a column is read as. */
export type FieldKind =
  | "text"
  | "code"
  | "integer"
  | "decimal"
  | "percent"
  | "date"
  | "dateTime"
  | "endTime"
  | "choice"
  | "boolean"
  | "partNumber"
  | "firmware"
  | "quantity"
  | "year";

/** One value a choice column may hold, with the words registers use for it. */
export type Choice = {
  value: string;
  label: string;
  synonyms: readonly string[];
  /** Words that mean it only roughly; they are taken, and said so. */
  roughly: readonly string[];
};

/** One field of a register: what a column of a file can be read into. Plain data, safe to hand to a page. */
export type Field = {
  key: string;
  label: string;
  kind: FieldKind;
  /** The column must be there and no row may leave it empty. */
  required: boolean;
  /** Unit the value is kept in, for people: "h", "weeks", "%". */
  unit: string | null;
  /** Smallest and largest believable number; outside is an error. */
  min: number | null;
  max: number | null;
  choices: readonly Choice[];
  /** Header words in English, German, Polish, Swedish and Spanish. */
  synonyms: readonly string[];
  example: string;
};

type Sketch = {
  key: string;
  label: string;
  kind: FieldKind;
  required?: true;
  unit?: string;
  min?: number;
  max?: number;
  choices?: readonly Choice[];
  /** Parted by "|". */
  synonyms?: string;
  example: string;
};

function splitWords(words: string | undefined): readonly string[] {
  return words === undefined || words === "" ? [] : words.split("|").map((word) => word.trim());
}

/** Fills the defaults of a field: optional, no unit, no limits, no choices. */
export function defineField(sketch: Sketch): Field {
  return {
    key: sketch.key,
    label: sketch.label,
    kind: sketch.kind,
    required: sketch.required ?? false,
    unit: sketch.unit ?? null,
    min: sketch.min ?? null,
    max: sketch.max ?? null,
    choices: sketch.choices ?? [],
    synonyms: splitWords(sketch.synonyms),
    example: sketch.example,
  };
}

/** A choice with its words, parted by "|"; those after "~" mean it only roughly. */
export function defineChoice(value: string, label: string, words: string): Choice {
  const [known, roughly] = words.split("~");
  return { value, label, synonyms: splitWords(known), roughly: splitWords(roughly) };
}
