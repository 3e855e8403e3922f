import "server-only";
import { inService, machineInService } from "@/lib/data/quality/inService";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { GapKey, GapSubject } from "@/lib/view/gap";
import { Prisma } from "@/prisma/generated/client";

/** The records gaps of one kind are counted in, and how a row of them is named. */
export interface SubjectSql {
  /** FROM and WHERE; `s` is the site in all of them. */
  readonly from: (asOf: IsoDate) => Prisma.Sql;
  /** A text that tells rows apart. */
  readonly id: Prisma.Sql;
  readonly label: Prisma.Sql;
  readonly detail: Prisma.Sql;
  /** What the page to mend it on is found by. */
  readonly target: Prisma.Sql;
  /** Line or part it bears on; null is none. */
  readonly bearsOn: Prisma.Sql;
}

const NONE = Prisma.sql`NULL::text`;
const machineOf = Prisma.sql`JOIN "Machine" m ON m."id" = p."machineId"
  JOIN "Line" l ON l."id" = m."lineId" JOIN "Site" s ON s."id" = l."siteId"`;

/** The unit in a place on a day. */
const standing = (asOf: IsoDate) => Prisma.sql`LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
  AND coalesce(pl."fromOn" <= ${asOf}::date, true) AND coalesce(pl."untilOn" > ${asOf}::date, true)
  LEFT JOIN "Unit" u ON u."id" = pl."unitId"`;

/** Serial numbers of units that stand at one site: more than one of them has it. */
const SERIALS_TWICE = Prisma.sql`SELECT tl."siteId", tu."serial"
  FROM "Unit" tu JOIN "Placement" tpl ON tpl."unitId" = tu."id" AND tpl."untilOn" IS NULL
  JOIN "Position" tp ON tp."id" = tpl."positionId" JOIN "Machine" tm ON tm."id" = tp."machineId"
  JOIN "Line" tl ON tl."id" = tm."lineId"
  WHERE tu."serial" IN (SELECT "serial" FROM "Unit" GROUP BY 1 HAVING count(*) > 1)
  GROUP BY 1, 2 HAVING count(*) > 1`;

export const SUBJECTS: Readonly<Record<GapSubject, SubjectSql>> = {
  line: {
    from: () => Prisma.sql`"Line" l JOIN "Site" s ON s."id" = l."siteId"`,
    id: Prisma.sql`l."id"::text`,
    label: Prisma.sql`l."code"`,
    detail: Prisma.sql`l."name"`,
    target: Prisma.sql`l."code"`,
    bearsOn: Prisma.sql`l."id"::text`,
  },
  controller: {
    from: () => Prisma.sql`"Controller" c JOIN "Site" s ON s."id" = c."siteId"`,
    id: Prisma.sql`c."id"::text`,
    label: Prisma.sql`c."designation"`,
    detail: Prisma.sql`c."model"`,
    target: Prisma.sql`(SELECT m."id"::text FROM "Machine" m WHERE m."controllerId" = c."id" ORDER BY m."code" LIMIT 1)`,
    bearsOn: NONE,
  },
  axis: {
    from: (asOf) => Prisma.sql`"Axis" a JOIN "Machine" m ON m."id" = a."machineId"
      JOIN "Line" l ON l."id" = m."lineId" JOIN "Site" s ON s."id" = l."siteId"
      LEFT JOIN (
        SELECT p."axisId", bool_or(p."itemClass" = 'drive') AS "drive", bool_or(p."itemClass" = 'motor') AS "motor"
        FROM "Position" p WHERE p."axisId" IS NOT NULL GROUP BY 1
      ) held ON held."axisId" = a."id"
      WHERE ${machineInService(asOf)}`,
    id: Prisma.sql`a."id"::text`,
    label: Prisma.sql`concat_ws(' / ', l."code", m."code", a."code")`,
    detail: Prisma.sql`coalesce(a."name", '')`,
    target: Prisma.sql`m."id"::text`,
    bearsOn: NONE,
  },
  place: {
    from: (asOf) => Prisma.sql`"Position" p ${machineOf} ${standing(asOf)} 
      LEFT JOIN (${SERIALS_TWICE}) twice ON twice."siteId" = s."id" AND twice."serial" = u."serial"
      WHERE ${inService(asOf)}`,
    id: Prisma.sql`p."id"::text`,
    label: Prisma.sql`concat_ws(' / ', l."code", m."code", p."designation")`,
    detail: Prisma.sql`replace(p."itemClass"::text, '_', ' ')`,
    target: Prisma.sql`m."id"::text`,
    bearsOn: Prisma.sql`'unidentified:' || p."itemClass"::text`,
  },
  lot: {
    from: () => Prisma.sql`"StockLot" t JOIN "Site" s ON s."id" = t."siteId" JOIN "Part" part ON part."id" = t."partId"
      WHERE coalesce(t."quantity" > 0, true) AND t."state" <> 'beyond_repair'`,
    id: Prisma.sql`t."id"::text`,
    label: Prisma.sql`concat_ws(' ', part."number", nullif(t."revision", ''))`,
    detail: Prisma.sql`concat_ws(', ', 'bin ' || t."bin", replace(t."state"::text, '_', ' '), t."quantity" || ' pieces')`,
    target: Prisma.sql`part."id"::text`,
    bearsOn: Prisma.sql`part."id"::text`,
  },
  event: {
    from: (asOf) => Prisma.sql`"Event" e JOIN "Site" s ON s."id" = e."siteId"
      WHERE e."happenedAt" < ${asOf}::date + 1 AND e."happenedAt" >= ${asOf}::date - make_interval(years => 5)`,
    id: Prisma.sql`e."id"::text`,
    label: Prisma.sql`concat_ws(' ', e."source", e."reference")`,
    detail: Prisma.sql`coalesce(e."setAside", left(e."text", 120), '')`,
    target: Prisma.sql`e."reference"`,
    bearsOn: NONE,
  },
  part: {
    from: (asOf) => Prisma.sql`(
        SELECT DISTINCT l."siteId", coalesce(u."partId", p."partId") AS "partId"
        FROM "Position" p JOIN "Machine" m ON m."id" = p."machineId" JOIN "Line" l ON l."id" = m."lineId"
        ${standing(asOf)} WHERE ${inService(asOf)} AND coalesce(u."partId", p."partId") IS NOT NULL
      ) used JOIN "Site" s ON s."id" = used."siteId" JOIN "Part" part ON part."id" = used."partId"
      LEFT JOIN LATERAL (
        SELECT max(f."checkedOn") AS "checkedOn" FROM "LifecycleFact" f
        WHERE (f."partId" = part."id" OR f."familyId" = part."familyId") AND f."recordedOn" <= ${asOf}::date
      ) fact ON true`,
    id: Prisma.sql`part."id"::text`,
    label: Prisma.sql`part."number"`,
    detail: Prisma.sql`concat_ws(' ', part."maker", part."description")`,
    target: Prisma.sql`part."id"::text`,
    bearsOn: Prisma.sql`part."id"::text`,
  },
  name: {
    from: () => Prisma.sql`(
        SELECT n."id", n."siteCode", n."written", n."kind"::text AS "kind", n."rows", n."batchId", b."committedAt"
        FROM "UnmatchedName" n JOIN "ImportBatch" b ON b."id" = n."batchId" WHERE b."state" = 'committed'
      ) n JOIN "Site" s ON s."code" = n."siteCode"`,
    id: Prisma.sql`n."id"::text`,
    label: Prisma.sql`n."written"`,
    detail: Prisma.sql`n."kind" || ', ' || n."rows" || ' rows'`,
    target: Prisma.sql`n."batchId"::text`,
    bearsOn: NONE,
  },
};

/** When a row of its subject has the gap, and since when it may be; null is no day. */
export interface GapSql {
  readonly when: (asOf: IsoDate) => Prisma.Sql;
  readonly since: Prisma.Sql;
}

const NO_DAY = Prisma.sql`NULL::date`;
const plain = (when: Prisma.Sql, since = NO_DAY): GapSql => ({ when: () => when, since });
const aged = (column: Prisma.Sql, months: number): GapSql => ({
  when: (asOf) => Prisma.sql`${column} < ${asOf}::date - make_interval(months => ${months}::int)`,
  since: column,
});
const copies = (condition: Prisma.Sql) =>
  Prisma.sql`EXISTS (SELECT 1 FROM "Backup" b WHERE b."controllerId" = c."id" AND ${condition})`;

/** Months after which a reading or a price is old: those after which a source of supply dates is. */
const OLD = 24;
/** A count is old after so many months; common practice, no source. */
const COUNT_OLD = 12;

const happened = Prisma.sql`e."happenedAt"::date`;

export const GAP_SQL: Readonly<Record<GapKey, GapSql>> = {
  "cost-missing": plain(Prisma.sql`l."costPerHour" IS NULL`),
  "cost-unowned": plain(
    Prisma.sql`l."costPerHour" IS NOT NULL AND (coalesce(l."costOwner", '') = '' OR l."costApprovedOn" IS NULL)`,
  ),
  "cost-expired": {
    when: (asOf) => Prisma.sql`l."costPerHour" IS NOT NULL AND l."costValidUntil" < ${asOf}::date`,
    since: Prisma.sql`l."costValidUntil"`,
  },
  "buffer-missing": plain(Prisma.sql`l."bufferHours" IS NULL`),
  "line-bare": plain(Prisma.sql`NOT EXISTS (SELECT 1 FROM "Machine" m WHERE m."lineId" = l."id")`),
  "contact-missing": plain(Prisma.sql`NOT EXISTS (SELECT 1 FROM "Contact" k
    WHERE k."siteId" = s."id" AND (k."lineId" = l."id" OR k."lineId" IS NULL))`),
  "firmware-unknown": plain(Prisma.sql`c."firmware" IS NULL`, Prisma.sql`c."readOn"`),
  "controller-old": aged(Prisma.sql`c."readOn"`, OLD),
  "backup-missing": plain(Prisma.sql`NOT ${copies(Prisma.sql`true`)}`),
  "backup-untried": plain(
    Prisma.sql`${copies(Prisma.sql`true`)} AND NOT ${copies(Prisma.sql`b."verifiedOn" IS NOT NULL`)}`,
    Prisma.sql`(SELECT max(b."takenOn") FROM "Backup" b WHERE b."controllerId" = c."id")`,
  ),
  "axis-driveless": plain(Prisma.sql`held."drive" IS NOT TRUE`),
  "axis-motorless": plain(Prisma.sql`held."motor" IS NOT TRUE`),
  "axis-unnumbered": plain(Prisma.sql`a."networkId" IS NOT NULL AND a."nodeAddress" IS NULL`),
  "place-unread": plain(Prisma.sql`coalesce(u."partId", p."partId") IS NULL`),
  "place-assumed": plain(
    Prisma.sql`p."evidence" IN ('inferred', 'assumed') AND coalesce(u."partId", p."partId") IS NOT NULL`,
  ),
  "unit-unread": plain(Prisma.sql`u."id" IS NULL`),
  "serial-twice": plain(Prisma.sql`twice."serial" IS NOT NULL`, Prisma.sql`pl."fromOn"`),
  "place-other": plain(Prisma.sql`p."partId" <> u."partId"`, Prisma.sql`pl."fromOn"`),
  "lot-uncounted": plain(Prisma.sql`t."quantity" IS NULL`, Prisma.sql`t."countedOn"`),
  "count-old": {
    when: (asOf) => Prisma.sql`t."quantity" IS NOT NULL
      AND coalesce(t."countedOn" < ${asOf}::date - make_interval(months => ${COUNT_OLD}::int), true)`,
    since: Prisma.sql`t."countedOn"`,
  },
  "power-unknown": plain(
    Prisma.sql`t."lastPoweredOn" IS NULL AND t."state" = 'usable' AND part."itemClass" IN ('drive', 'power_supply', 'hmi')`,
  ),
  "lot-unproven": plain(Prisma.sql`t."state" IN ('unproven', 'removed_untested')`, Prisma.sql`t."testedOn"`),
  "origin-unknown": plain(Prisma.sql`t."originUnknown"`),
  "event-partless": plain(
    Prisma.sql`e."setAside" IS NULL AND e."partId" IS NULL AND e."positionId" IS NULL AND e."itemClass" IS NULL`,
    happened,
  ),
  "event-hourless": plain(
    Prisma.sql`e."setAside" IS NULL AND e."kind" = 'failure' AND e."downtimeHours" IS NULL`,
    happened,
  ),
  "event-aside": plain(Prisma.sql`e."setAside" IS NOT NULL`, happened),
  "supply-undated": {
    when: (asOf) =>
      Prisma.sql`coalesce(fact."checkedOn" < ${asOf}::date - make_interval(months => ${OLD}::int), true)`,
    since: Prisma.sql`fact."checkedOn"`,
  },
  "price-missing": plain(Prisma.sql`part."price" IS NULL`),
  "price-old": {
    when: (asOf) => Prisma.sql`part."price" IS NOT NULL
      AND coalesce(part."pricedOn" < ${asOf}::date - make_interval(months => ${OLD}::int), true)`,
    since: Prisma.sql`part."pricedOn"`,
  },
  "lead-missing": plain(Prisma.sql`part."leadWeeks" IS NULL`),
  "name-unmatched": plain(Prisma.sql`true`, Prisma.sql`n."committedAt"::date`),
};
