import type { ColumnDialect, Dialect, DialectFinding } from "@/lib/intake/dialect";
import type { BasisWord } from "@/lib/intake/quantityBasis";

/** What a person said about numbers and dates of a file; what is left out stays as found. */
export interface DialectAnswers {
  readonly decimalMark?: "point" | "comma" | undefined;
  readonly dateOrder?: "dayFirst" | "monthFirst" | undefined;
  readonly quantityBasis?: BasisWord | undefined;
  readonly nullWords?: readonly string[] | undefined;
}

const CUSTOMS = ["decimalMark", "dateOrder"] as const;

/**
 * What to read a file by: what its values say, a person's word where it was given.
 *
 * An answer is also written down for each column whose values tell nothing, so that openQuestions sees it.
 */
export function settleDialect(finding: DialectFinding, answers: DialectAnswers): Dialect {
  const { proposal, ask } = finding;
  // Where the file is asked about, the answer is about the columns that do not tell, not about those that do.
  const answeredForFile = Object.fromEntries(
    CUSTOMS.filter((custom) => answers[custom] !== undefined && !ask.includes(custom)).map((custom) => [
      custom,
      answers[custom],
    ]),
  );
  const columns = finding.columns.map((column): [string, ColumnDialect] => {
    const told = CUSTOMS.filter((custom) => isUndecided(column[custom]) && answers[custom] !== undefined);
    const answered = Object.fromEntries(told.map((custom) => [custom, answers[custom]]));
    return [column.header, { ...proposal.columns[column.header], ...answered }];
  });
  return {
    ...proposal,
    ...answeredForFile,
    ...(answers.quantityBasis === undefined ? {} : { quantityBasis: answers.quantityBasis }),
    ...(answers.nullWords === undefined ? {} : { nullWords: answers.nullWords }),
    columns: Object.fromEntries(columns.filter(([, own]) => Object.keys(own).length > 0)),
  };
}

/** What of the finding's questions the dialect leaves open; nothing may be loaded until it is empty. */
export function openQuestions(finding: DialectFinding, dialect: Dialect): DialectFinding["ask"] {
  return finding.ask.filter((custom) =>
    custom === "quantityBasis"
      ? dialect.quantityBasis === undefined
      : finding.columns.some(
          (column) =>
            isUndecided(column[custom]) &&
            (!Object.hasOwn(dialect.columns, column.header) ||
              dialect.columns[column.header]?.[custom] === undefined),
        ),
  );
}

function isUndecided(found: { readonly state: string } | null): boolean {
  return found !== null && (found.state === "ambiguous" || found.state === "conflict");
}
