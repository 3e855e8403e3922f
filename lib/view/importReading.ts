import { type ChooseReading, readingChoice } from "@/lib/schema/import";
import type { ImportColumn, ImportCustom } from "@/lib/view/importPreview";
import type { ImportOpening } from "@/lib/view/importView";

type Choice = NonNullable<ChooseReading["reading"]>;
type Answers = ChooseReading["answers"];

/** What a person answered about numbers and dates so far. */
export function answersOf(customs: readonly ImportCustom[]): Answers {
  const said = customs.filter(({ answer }) => answer !== null);
  return Object.fromEntries(said.map(({ custom, answer }) => [custom, answer]));
}

/** The field of each column as it is read now. */
export function mappingOf(columns: readonly ImportColumn[]): Record<string, string | null> {
  return Object.fromEntries(columns.map(({ header, field }) => [header, field]));
}

/**
 * What a person chose in the form about a file, beside what was chosen before. What is as found is not kept as
 * a choice; the header row is found anew when sheet, letters or separator become others.
 */
export function choiceOfForm(opening: ImportOpening, form: FormData): Choice {
  const { chosen } = opening;
  const said = (name: "sheet" | "encoding" | "separator") => {
    const value = form.get(name);
    return value === null || value === opening[name] ? chosen[name] : String(value);
  };
  const file = { sheet: said("sheet"), encoding: said("encoding"), separator: said("separator") };
  const isOther = Object.entries(file).some(([name, value]) => value !== chosen[name as keyof typeof file]);
  const headerRow = Number(form.get("headerRow") ?? opening.headerRow);
  const headerLines = form.has("twoLines") ? 2 : 1;
  const isMoved = headerRow !== opening.headerRow || headerLines !== opening.headerLines;
  const header = isMoved
    ? { headerRow, headerLines }
    : isOther
      ? {}
      : { headerRow: chosen.headerRow, headerLines: chosen.headerLines };
  const given = Object.entries({ ...file, ...header }).filter(([, value]) => value !== undefined);
  return readingChoice.parse(Object.fromEntries(given));
}
