type UnitTable = Readonly<Record<string, number>>;

/** Words of the files for one unit, parted by "|", and what one of it is in the unit kept. */
function table(...lines: readonly (readonly [words: string, factor: number])[]): UnitTable {
  return Object.fromEntries(
    lines.flatMap(([words, factor]) => words.split("|").map((word) => [foldUnit(word), factor])),
  );
}

/** A unit's word without case, points, blanks and the different dashes and dots between its parts. */
function foldUnit(word: string): string {
  return word
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[·⋅*×]|[\p{Pd}−]/gu, "-")
    .replace(/[\s._]+/gu, "");
}

const DAYS = "d|day|days|tag|tage|dni|dzień|dag|dagar|día|días|jour|jours|j|giorno|giorni|gg";
const WEEKS = "wk|wks|w|week|weeks|wo|woche|wochen|tyg|tydz|v|veckor|sem|semana|semanas|semaines|settimane";

/** Share of a peak current that its effective value is, for a sine. */
const RMS_OF_PEAK = Math.SQRT1_2;

/**
 * Units of the files by the unit a field is kept in.
 *
 * The international inch, foot, pound and horsepower (550 ft·lbf/s) follow from their definitions: 0.0254 m, 0.3048 m,
 * 0.45359237 kg and 9.80665 m/s²; the metric horsepower is 75 kgf·m/s.
 */
const UNITS: Readonly<Record<string, UnitTable>> = {
  h: table(
    ["h|hr|hrs|hour|hours|std|stunde|stunden|godz|tim|timmar|hora|horas|heure|heures|ora|ore", 1],
    ["min|mins|minute|minutes|minuten|minut|minuter|minutos|minuti", 1 / 60],
    ["s|sec|sek", 1 / 3600],
    [DAYS, 24],
  ),
  weeks: table([WEEKS, 1], [DAYS, 1 / 7]),
  days: table([DAYS, 1], [WEEKS, 7]),
  m: table(["m", 1], ["cm", 0.01], ["mm", 0.001], ["ft", 0.3048], ["in", 0.0254]),
  kW: table(["kw", 1], ["w", 0.001], ["hp|bhp", 0.745_699_871_6], ["ps|km|cv|ch", 0.735_498_75]),
  A: table(["a|arms|aeff|a rms|a eff", 1], ["ma", 0.001], ["apk|ap|apeak|a pk|a peak", RMS_OF_PEAK]),
  Nm: table(
    ["nm|n-m", 1],
    ["ncm|n-cm", 0.01],
    ["lb-in|lbf-in|in-lb|in-lbf|lbin|inlb", 0.112_984_829],
    ["lb-ft|lbf-ft|ft-lb|ft-lbf|lbft|ftlb", 1.355_817_948],
    ["oz-in|ozf-in|in-oz", 0.007_061_552],
    ["kgf-cm|kg-cm|kp-cm", 0.098_066_5],
    ["kgf-m|kg-m|kp-m", 9.806_65],
  ),
};

/** How much one of a file's unit is in the unit of a field; null when it is none of its kind. */
export function unitFactor(word: string, unit: string | null): number | null {
  const known = UNITS[unit ?? ""] ?? {};
  const folded = foldUnit(word);
  return Object.hasOwn(known, folded) ? (known[folded] ?? null) : null;
}

/** The unit a header gives in brackets or behind a comma, where it is one of the field's kind and not the field's own. */
export function unitOfHeader(header: string, unit: string | null): string | null {
  const words = [...header.matchAll(/[([{]([^)\]}]+)[)\]}]|,\s*(\S+)\s*$/gu)].map((m) => m[1] ?? m[2] ?? "");
  const other = words.find((word) => (unitFactor(word, unit) ?? 1) !== 1);
  return other?.trim() ?? null;
}
