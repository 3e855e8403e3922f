import type { Values } from "@/lib/intake/checkRow";
import { given, type RowIntents, type RowProblem, storedNumber } from "@/lib/intake/intents/cells";
import { type Intent, keyOf } from "@/lib/intake/intents/intent";
import { booleanValue, textValue } from "@/lib/intake/rowValues";
import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { namesPassword, PHONE } from "@/lib/schema/cardEntry";

interface Context {
  readonly rowNumber: number;
  readonly siteOfLine: (lineCode: string) => string | null;
}

/** What a row of the register of copies says: one copy of a controller. */
export function backupIntents(row: Values, { rowNumber }: Context): RowIntents {
  const text = (key: string) => textValue(row, key) ?? "";
  const controller = keyOf(text("siteCode"), text("controllerDesignation"));
  const said = { kind: text("kind"), takenOn: text("takenOn"), keptAt: text("keptAt") };
  return {
    intents: [
      {
        entity: "Backup",
        key: keyOf(controller, said.kind, said.takenOn, said.keptAt),
        parents: { controllerId: { entity: "Controller", key: controller } },
        values: given({
          verifiedOn: textValue(row, "verifiedOn"),
          sourceAvailable: booleanValue(row, "sourceAvailable"),
        }),
        whenNew: said,
        rowNumber,
      },
    ],
    problems: namesPassword(said.keptAt)
      ? [
          {
            field: "keptAt",
            problem: "The cell looks as if it held a password",
            remedy: "Say where the copy lies and who keeps the password, never the password itself",
          },
        ]
      : [],
  };
}

/** What a row of the call list says: a function with its number, of a line or of the whole site. */
export function contactIntents(row: Values, context: Context): RowIntents {
  const role = textValue(row, "role") ?? "";
  const phone = textValue(row, "phone") ?? "";
  const problems = PHONE.test(phone)
    ? []
    : [
        {
          field: "phone",
          problem: `“${phone}” is no number that can be dialled`,
          remedy: "Write digits and spaces, and + before a country code",
        },
      ];
  return placed(row, context, {
    ...{ entity: "Contact", ownKey: role, problems },
    values: given({ phone, hours: textValue(row, "hours"), note: textValue(row, "note") }),
    whenNew: { role },
  });
}

/** What a row of the shutdown calendar says: the days on which a line or a whole site stands still. */
export function windowIntents(row: Values, context: Context): RowIntents {
  const startsOn = textValue(row, "startsOn") ?? "";
  const endsOn = textValue(row, "endsOn") ?? "";
  const usableHours = storedNumber(row, "usableHours", 1);
  return placed(row, context, {
    ...{ entity: "ShutdownWindow", ownKey: startsOn },
    values: given({ name: textValue(row, "name"), endsOn, usableHours, note: textValue(row, "note") }),
    whenNew: { startsOn },
    problems: tooManyHours({ startsOn, endsOn, usableHours }),
  });
}

interface Window {
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly usableHours: number | null;
}

function tooManyHours({ startsOn, endsOn, usableHours }: Window): RowProblem[] {
  const most = 24 * (daysBetween(startsOn, endsOn) + 1);
  if (usableHours === null || usableHours <= most) return [];
  return [
    {
      field: "usableHours",
      problem: `${usableHours} hours do not fit between ${startsOn} and ${endsOn}, which have ${most}`,
      remedy: "Correct the hours or the days",
    },
  ];
}

interface Said extends Pick<Intent, "entity" | "values" | "whenNew"> {
  /** What tells the row from others of the same place. */
  readonly ownKey: string;
  readonly problems: readonly RowProblem[];
}

/** A thing of a line, or of a whole site where the row names no line. */
function placed(
  row: Values,
  { rowNumber, siteOfLine }: Context,
  { entity, ownKey, problems, values, whenNew }: Said,
): RowIntents {
  const site = textValue(row, "siteCode") ?? "";
  const line = textValue(row, "lineCode");
  const parents = {
    siteId: { entity: "Site" as const, key: site },
    ...(line === null ? {} : { lineId: { entity: "Line" as const, key: line } }),
  };
  // The same words whether the line is another site's or does not exist: an import must not tell which.
  const stands = line === null || siteOfLine(line) === site;
  return {
    intents: [{ entity, key: keyOf(site, line, ownKey), parents, values, whenNew, rowNumber }],
    problems: stands
      ? problems
      : [
          ...problems,
          {
            field: "lineCode",
            problem: `${line} is no line of ${site}`,
            remedy: "Correct the site or the line",
          },
        ],
  };
}
