import { dayNumber } from "@/seed/dirtyFiles/dayNumber";
import type { Spoil } from "@/seed/dirtyFiles/spoil";
import type { Habits, Language } from "@/seed/registerFiles/habits";

/** Words for pieces back from repair; and for those of somebody else, which lie there but are nobody's to use. */
const REPAIRED: Readonly<Record<Language, string>> = {
  ...{ de: "repariert", pl: "naprawiony", sv: "reparerad", en: "repaired", es: "reparado" },
};
const CUSTOMERS: Readonly<Record<Language, string>> = {
  ...{
    de: "Kundeneigentum",
    pl: "własność klienta",
    sv: "kundens egendom",
    en: "customer-owned",
    es: "del cliente",
  },
};
const ABOUT: Readonly<Record<Language, string>> = {
  ...{ de: "ca.", pl: "ok.", sv: "ca", en: "approx.", es: "aprox." },
};
const SOME: Readonly<Record<Language, string>> = {
  ...{ de: "einige", pl: "kilka", sv: "några", en: "some", es: "algunos" },
};
const SETS: Readonly<Record<Language, string>> = {
  ...{ de: "2 Sätze", pl: "2 komplety", sv: "2 satser", en: "2 sets", es: "2 juegos" },
};

/** O in place of the first zero of a number, as a label printer or a tired clerk writes it. */
const withLetterO = (number: string) => number.replace("0", "O");

/** A number with its revision behind it, where the file has no column for it. */
const withRevision = (number: string) => `${number} rev. C`;

/** What spoils a stock export of a site: spellings, counts, states, dates, code. */
export function stockSpoils({ language, dashes }: Habits): Spoil[] {
  const spell = (number: string) => (dashes ? number : number.replaceAll("-", ""));
  return [
    { row: 0, field: "partNumber", problem: 1, write: (number) => number.toLowerCase().replaceAll("-", " ") },
    { row: 0, field: "countedOn", problem: 20, write: () => "tbd", means: null },
    { row: 1, field: "partNumber", problem: 1, write: (number) => number.replaceAll("-", "–") },
    { row: 1, field: "state", problem: 16, write: () => REPAIRED[language], means: "usable" },
    { row: 2, field: "partNumber", problem: 1, write: (number) => number.replaceAll("-", "") },
    { row: 2, field: "note", problem: 11, write: () => "=cmd|' /C calc'!A0", means: null },
    {
      row: 3,
      field: "partNumber",
      problem: 2,
      write: (number) => `${spell(number)} ser. C`,
      means: withRevision,
    },
    {
      row: 3,
      field: "note",
      problem: 11,
      write: () => "<script>x()</script>",
      means: "<script>x()</script>",
    },
    { row: 4, field: "partNumber", problem: 2, write: (number) => `${number}/C`, means: withRevision },
    {
      ...{ row: 5, field: "partNumber", problem: 1, write: withLetterO },
      means: (number) => ({ looksLike: number }),
    },
    { row: 6, field: "storeroomNumber", problem: 4, write: () => "3.0045814E+07", refuses: true },
    { row: 7, field: "quantity", problem: 13, write: () => "2+1", means: 3 },
    { row: 8, field: "quantity", problem: 13, write: () => `${ABOUT[language]} 5`, means: 5 },
    { row: 9, field: "quantity", problem: 13, write: () => SOME[language], means: null },
    { row: 10, field: "quantity", problem: 13, write: () => "5 (2 def.)", means: 3 },
    { row: 11, field: "quantity", problem: 14, write: () => SETS[language], means: null },
    { row: 11, field: "countedOn", problem: 6, write: () => "04/2026", means: "2026-04-01" },
    { row: 12, field: "quantity", problem: 25, write: () => "-1", refuses: true },
    { row: 13, field: "countedOn", problem: 6, write: () => "KW14/26", means: "2026-03-30" },
    {
      row: 13,
      field: "lastPoweredOn",
      problem: 6,
      write: (day) => (day === "" ? "" : String(dayNumber(day))),
    },
    { row: 14, field: "state", problem: 16, write: () => CUSTOMERS[language], means: "reserved" },
    { row: 15, field: "quantity", problem: 20, write: () => "9999", means: null },
    { row: 16, field: "partNumber", problem: 22, write: () => "", refuses: true },
    { row: 16, field: "storeroomNumber", problem: 22, write: () => "", refuses: true },
    { row: 16, field: "description", problem: 22, write: (text) => text.toUpperCase().slice(0, 14) },
    { row: 17, field: "quantity", problem: 11, write: () => "=VLOOKUP(A2,B:C,2)", refuses: true },
    { row: 18, field: "bin", problem: 20, write: () => "XXX", refuses: true },
  ];
}

/** What a workbook adds: formulas with what they show, error cells, numbers shown with zeros before them. */
export const WORKBOOK_STOCK_SPOILS: readonly Spoil[] = [
  {
    ...{ row: 17, field: "quantity", problem: 11 },
    ...{ write: () => ({ formula: "SUM(Z1:Z9)", shows: 4 }), means: 4 },
  },
  { row: 19, field: "quantity", problem: 11, write: () => ({ formula: "H30+1", shows: null }), means: null },
  { row: 20, field: "quantity", problem: 11, write: () => ({ error: "#REF!" }), means: null },
  {
    ...{ row: 21, field: "storeroomNumber", problem: 4 },
    ...{ write: () => ({ digits: 123 }), means: "00000123" },
  },
];
