import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { shelfSteps } from "@/lib/schema/lotStep";

const words = (most: number) => z.string().trim().max(most, `Use at most ${most} characters.`);
const must = (most: number, missing: string) => words(most).min(1, missing);
const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30.");
const maybeDay = z
  .union([z.literal(""), day], "Write a day that exists, as 2026-11-30.")
  .transform((text) => (text === "" ? null : text));
const maybeId = z.union([z.uuid(), z.literal("")]).transform((id) => (id === "" ? null : id));

const results = ["usable", "unproven", "needs_repair", "scrapped"] as const;

/** What is said of a removed unit; no result is not tested yet. */
const removedFields = {
  positionId: maybeId,
  /** Number on the plate. */
  plate: must(60, "Write the number on the plate."),
  serial: words(60),
  revision: words(20),
  removedOn: day,
  result: z.union([z.literal(""), z.enum(results)]).transform((text) => (text === "" ? null : text)),
  testedBy: words(80),
  how: words(200),
  testedOn: maybeDay,
  bin: words(40),
};

type RemovedSaid = z.output<z.ZodObject<typeof removedFields>>;

/** What belongs to a result is there with it and not without it. */
function oneResult(said: RemovedSaid, context: z.RefinementCtx): void {
  const missing = (path: keyof RemovedSaid, message: string) =>
    context.addIssue({ code: "custom", path: [path], message });
  if (said.result === null) {
    if (said.testedBy !== "" || said.testedOn !== null) missing("result", "Choose what the test said.");
    return;
  }
  if (said.testedBy === "") missing("testedBy", "Say who tested it, by function.");
  if (said.how === "") missing("how", "Say how it was tested.");
  if (said.testedOn === null) missing("testedOn", "Write the day of the test.");
  else if (said.testedOn < said.removedOn) missing("testedOn", "It cannot be tested before it came out.");
  if (said.result === "scrapped" && said.bin !== "") missing("bin", "What is scrapped lies in no bin.");
}

export const addRemoved = z.strictObject({ projectId: z.uuid(), ...removedFields }).superRefine(oneResult);
export const changeRemoved = z
  .strictObject({ unitId: z.uuid(), version: z.int().positive(), ...removedFields })
  .superRefine(oneResult);
export const dropRemoved = z.strictObject({ unitId: z.uuid(), version: z.int().positive() });

export const fitUnit = z.strictObject({
  projectId: z.uuid(),
  positionId: z.uuid("Choose the place."),
  /** 0 is the first record of the place. */
  version: z.int().nonnegative(),
  plate: must(60, "Write the number on the plate."),
  serial: must(60, "Write the serial number on the plate."),
  revision: words(20),
  firmware: must(40, "Write the firmware as read from the unit."),
  added: z.boolean(),
  fittedOn: day,
});
export const dropFitted = z.strictObject({ unitId: z.uuid(), version: z.int().positive() });

export const statementKind = z.enum([
  "register",
  "drawings",
  "levels",
  "commitments",
  "no_axes",
  "none_removed",
]);
export const stateForClosing = z.strictObject({
  projectId: z.uuid(),
  kind: statementKind,
  statedBy: must(80, "Say who answers for it, by function."),
  note: words(300),
});
export const withdrawStatement = z.strictObject({ projectId: z.uuid(), kind: statementKind });

/** `seen`: the versions of the removed and the fitted units added up, as the page showed them. */
export const closeProject = z.strictObject({
  projectId: z.uuid(),
  version: z.int().positive(),
  seen: z.int().nonnegative(),
});
export const reopenProject = z.strictObject({ projectId: z.uuid(), version: z.int().positive() });

export const checkBenefit = z.strictObject({
  projectId: z.uuid(),
  conclusion: must(1000, "Write what came of it, and what the next request should do otherwise."),
});
export const reopenBenefit = z.strictObject({ projectId: z.uuid() });

/** What closing did to places and units. */
export const placeSteps = z.strictObject({
  /** Stays that were ended, that were made, and units that were made, by id. */
  ended: z.array(z.uuid()),
  placed: z.array(z.strictObject({ id: z.uuid(), untilOn: z.string().nullable() })),
  unitsMade: z.array(z.uuid()),
  places: z.array(
    z.strictObject({
      positionId: z.uuid(),
      partBefore: z.uuid().nullable(),
      evidenceBefore: z.enum(["measured", "documented", "inferred", "assumed"]),
      partAfter: z.uuid(),
    }),
  ),
});

/** Everything a closing did, kept so that it can be taken back. */
export const closingSteps = z.strictObject({
  shelf: shelfSteps,
  base: placeSteps,
  statusBefore: z.enum(["funded", "in_work", "proving", "accepted", "parked"]),
});

export type AddRemoved = z.output<typeof addRemoved>;
export type ChangeRemoved = z.output<typeof changeRemoved>;
export type DropRemoved = z.output<typeof dropRemoved>;
export type FitUnit = z.output<typeof fitUnit>;
export type DropFitted = z.output<typeof dropFitted>;
export type StateForClosing = z.output<typeof stateForClosing>;
export type WithdrawStatement = z.output<typeof withdrawStatement>;
export type CloseProject = z.output<typeof closeProject>;
export type ReopenProject = z.output<typeof reopenProject>;
export type CheckBenefit = z.output<typeof checkBenefit>;
export type ReopenBenefit = z.output<typeof reopenBenefit>;
export type PlaceSteps = z.output<typeof placeSteps>;
export type ClosingSteps = z.output<typeof closingSteps>;
