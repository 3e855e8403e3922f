import "server-only";
import { machineInService } from "@/lib/data/quality/inService";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type AxisFilter, type AxisSort, NO_PANEL } from "@/lib/view/axisList";
import { Prisma } from "@/prisma/generated/client";

/** Parts of a condition, all of which must hold. */
function all(conditions: readonly (Prisma.Sql | null)[]): Prisma.Sql {
  const given = conditions.filter((condition) => condition !== null);
  return given.length === 0 ? Prisma.sql`true` : Prisma.join(given, " AND ");
}

/** The part in an axis's drive or motor place on a day: what sits there counts, else what belongs there. */
export function itemOfAxis(itemClass: "drive" | "motor", asOf: IsoDate): Prisma.Sql {
  return Prisma.sql`
    SELECT part."id"::text AS "id", part."number", f."name" AS "family", panel."designation" AS "panel"
    FROM "Position" p
    LEFT JOIN "Panel" panel ON panel."id" = p."panelId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    LEFT JOIN "Part" part ON part."id" = coalesce(u."partId", p."partId")
    LEFT JOIN "Family" f ON f."id" = part."familyId"
    WHERE p."axisId" = a."id" AND p."itemClass" = ${itemClass}::"ItemClass"
    ORDER BY p."designation" LIMIT 1`;
}

/** Axes `a` with machine `m`, line `l`, site `s` and network `n`. */
export const AXES = Prisma.sql`"Axis" a
  JOIN "Machine" m ON m."id" = a."machineId"
  JOIN "Line" l ON l."id" = m."lineId"
  JOIN "Site" s ON s."id" = l."siteId"
  LEFT JOIN "Network" n ON n."id" = a."networkId"`;

/** Condition: the filter chooses the axis, and its machine is in service. */
export function chosen(filter: AxisFilter, asOf: IsoDate): Prisma.Sql {
  const { site, line, family, network, evidence, panel, text } = filter;
  return all([
    machineInService(asOf),
    site === null ? null : Prisma.sql`s."code" = ${site}`,
    line === null ? null : Prisma.sql`l."code" = ${line}`,
    family === null ? null : hasFamily(family, asOf),
    network === null ? null : onNetwork(network),
    evidence === null ? null : Prisma.sql`a."evidence" = ${evidence}::"Evidence"`,
    panel === null ? null : inPanel(panel),
    ...text.split(/\s+/).filter(Boolean).map(standsIn),
  ]);
}

function onNetwork(network: NonNullable<AxisFilter["network"]>): Prisma.Sql {
  return network === "none" ? Prisma.sql`n."id" IS NULL` : Prisma.sql`n."kind" = ${network}::"NetworkKind"`;
}

/** The axis's drive stands in a panel of that designation. */
function inPanel(panel: string): Prisma.Sql {
  const placed = Prisma.sql`SELECT p."axisId" FROM "Position" p JOIN "Panel" panel ON panel."id" = p."panelId"
    WHERE p."itemClass" = 'drive' AND p."axisId" IS NOT NULL`;
  return panel === NO_PANEL
    ? Prisma.sql`NOT EXISTS (${placed} AND p."axisId" = a."id")`
    : Prisma.sql`a."id" IN (${placed} AND panel."designation" = ${panel})`;
}

/** First the axes that have or had anything of the family, by index; of those, the ones whose drive is of it. */
function hasFamily(family: string, asOf: IsoDate): Prisma.Sql {
  const parts = Prisma.sql`(SELECT part."id" FROM "Part" part JOIN "Family" f ON f."id" = part."familyId"
    WHERE f."name" = ${family})`;
  return Prisma.sql`a."id" IN (
      SELECT p."axisId" FROM "Position" p WHERE p."partId" IN ${parts}
      UNION SELECT p."axisId" FROM "Unit" u JOIN "Placement" pl ON pl."unitId" = u."id"
        JOIN "Position" p ON p."id" = pl."positionId" WHERE u."partId" IN ${parts})
    AND (SELECT drive."family" FROM (${itemOfAxis("drive", asOf)}) drive) = ${family}`;
}

/** The text with the marks that LIKE reads taken as plain. */
const plain = (word: string) => word.replace(/[\\%_]/g, "\\$&");

function standsIn(word: string): Prisma.Sql {
  return Prisma.sql`concat_ws(' ', l."code", l."name", m."code", m."name", a."code", a."name", a."feedback", n."name")
    ILIKE ${`%${plain(word)}%`}`;
}

/** What rows are sorted by, in turn. */
export interface AxisOrder {
  readonly by: readonly Prisma.Sql[];
  readonly descending: boolean;
}

const PLACE = [Prisma.sql`l."code"`, Prisma.sql`m."code"`, Prisma.sql`a."code"`];

const BEFORE_PLACE: Readonly<
  Record<AxisSort, { readonly value: Prisma.Sql; readonly none: Prisma.Sql } | null>
> = {
  place: null,
  year: { value: Prisma.sql`a."inServiceYear"`, none: Prisma.sql`0` },
  network: { value: Prisma.sql`n."name"`, none: Prisma.sql`''` },
  feedback: { value: Prisma.sql`a."feedback"`, none: Prisma.sql`''` },
  evidence: { value: Prisma.sql`a."evidence"`, none: Prisma.sql`'measured'::"Evidence"` },
};

/** Order of the rows: by the chosen value, not known last either way round, then by place, which is unique. */
export function orderOf({ sort, descending }: Pick<AxisFilter, "sort" | "descending">): AxisOrder {
  const first = BEFORE_PLACE[sort];
  if (first === null) return { by: PLACE, descending };
  const known = descending ? Prisma.sql`(${first.value} IS NOT NULL)` : Prisma.sql`(${first.value} IS NULL)`;
  return { by: [known, Prisma.sql`coalesce(${first.value}, ${first.none})`, ...PLACE], descending };
}

/** The terms of ORDER BY. */
export function inOrder({ by, descending }: AxisOrder): Prisma.Sql {
  return Prisma.join(by.map((term) => (descending ? Prisma.sql`${term} DESC` : term)));
}

/** Condition: the row comes after the axis of that id, itself in the scope; one out of it has nothing after it. */
export function seekAfter(
  { by, descending }: AxisOrder,
  after: string | null,
  scope: Prisma.Sql,
): Prisma.Sql {
  if (after === null) return Prisma.sql`true`;
  const terms = Prisma.join([...by]);
  return Prisma.sql`(${terms}) ${descending ? Prisma.sql`<` : Prisma.sql`>`} (
    SELECT ${terms} FROM ${AXES} WHERE a."id" = ${after}::uuid AND ${scope})`;
}
