import { z } from "zod";

interface Subject {
  /** What a person reads beside its box. */
  readonly label: string;
  /** Where the interface shows the things it names; null is a screen only. */
  readonly read: string | null;
  /** Whether an audited deed on an entity is of this kind. */
  readonly covers: (deed: string, entity: string) => boolean;
}

const deedIs =
  (...deeds: readonly string[]) =>
  (deed: string) =>
    deeds.includes(deed);
const entityIs =
  (...entities: readonly string[]) =>
  (_deed: string, entity: string) =>
    entities.includes(entity);

/** Kinds of change an address can be told of; each is a deed of the audit trail. */
export const SUBJECTS = {
  "event.recorded": { label: "An event was recorded", read: "/api/v1/events", covers: deedIs("event:add") },
  "event.taken-back": {
    ...{ label: "An event was taken back", read: null, covers: deedIs("event:undo") },
  },
  "stock.changed": {
    ...{ label: "Stock was changed", read: "/api/v1/stock-lots", covers: entityIs("StockLot") },
  },
  "repair.changed": {
    ...{ label: "A repair was sent, received or changed", read: "/api/v1/repairs" },
    covers: entityIs("RepairOrder"),
  },
  "supply.changed": {
    ...{ label: "Supply dates came or went with a maker's notice", read: "/api/v1/supply-dates" },
    covers: entityIs("Notice"),
  },
  "import.loaded": {
    ...{ label: "A file was loaded", read: "/api/v1/imports/{id}", covers: deedIs("import:commit") },
  },
  "import.taken-back": {
    ...{ label: "A loaded file was taken back", read: "/api/v1/imports/{id}", covers: deedIs("import:undo") },
  },
  "transfer.moved": {
    ...{ label: "A transfer between sites moved on", read: null, covers: entityIs("Transfer") },
  },
  "plan.decided": { label: "A plan was decided", read: null, covers: deedIs("plan:approve") },
  "project.changed": {
    ...{ label: "A project was started, changed or closed", read: "/api/v1/projects" },
    covers: entityIs("Project", "ProjectClosing"),
  },
  "project.money": {
    ...{ label: "Orders, payments or budget of a project changed", read: "/api/v1/projects" },
    covers: entityIs("CostEntry", "CostImport", "ChangeOrder", "ClassForecast"),
  },
  "report.issued": { label: "A report was given out", read: null, covers: entityIs("ReportIssue") },
} as const satisfies Record<string, Subject>;

export type SubjectKey = keyof typeof SUBJECTS;

/** What a message that only tries the way is about. */
export const TRIAL = "trial";

export const SUBJECT_KEYS = Object.keys(SUBJECTS) as [SubjectKey, ...SubjectKey[]];

/** The kind of change a deed is, or null when nobody can be told of it. */
export function subjectOf({
  deed,
  entity,
}: {
  readonly deed: string;
  readonly entity: string;
}): SubjectKey | null {
  return SUBJECT_KEYS.find((key) => SUBJECTS[key].covers(deed, entity)) ?? null;
}

const id = z.strictObject({ webhookId: z.uuid() });

/** An address to be told of changes. */
export const makeWebhook = z.strictObject({
  name: z.string().trim().min(1, "Say which system it is.").max(80, "Use at most 80 characters."),
  address: z
    .url({ protocol: /^https?$/, error: "Write a web address, such as https://mes.plant.example/ebbline." })
    .max(500, "Use at most 500 characters.")
    .refine((text) => {
      const { username, password } = new URL(text);
      return username === "" && password === "";
    }, "Leave name and password out of the address; the signature says who sends."),
  subjects: z.array(z.enum(SUBJECT_KEYS)).min(1, "Choose at least one kind of change."),
  /** Null is all sites. */
  siteId: z.uuid().nullable(),
});

export const ofWebhook = id;

/** Sets a webhook in or out of use, as the person saw it. */
export const switchWebhook = id.extend({ version: z.int(), inUse: z.boolean() });

export const resendDelivery = z.strictObject({ deliveryId: z.uuid() });

export type MakeWebhook = z.output<typeof makeWebhook>;
export type OfWebhook = z.output<typeof ofWebhook>;
export type SwitchWebhook = z.output<typeof switchWebhook>;
export type ResendDelivery = z.output<typeof resendDelivery>;
