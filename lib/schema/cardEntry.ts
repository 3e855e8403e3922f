import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

const words = (most: number, missing: string) =>
  z.string().trim().min(1, missing).max(most, `Use at most ${most} characters.`);
/** A number that can be dialled. */
export const PHONE = /^\+?[\d ()/-]{3,30}$/;

const PASSWORD = /\b(pass(?:word|wort|code)?|pwd|pw|kennwort|hasło|lösenord|contraseña)\s*[:=]\s*\S/i;

/** Whether a text looks as if it held a password; no record of ours is a place for one. */
export function namesPassword(text: string): boolean {
  return PASSWORD.test(text);
}

const day = z.string().refine(isIsoDate, "Write a day that exists, as 2026-09-30.");

/** What a person says of a copy of what runs in a machine's controller. */
export const addBackup = z
  .strictObject({
    machineId: z.uuid(),
    kind: z.enum(["program", "parameters", "operator_panel"], "Choose what was copied."),
    takenOn: day,
    keptAt: words(200, "Say where the copy lies: folder, shelf, medium. Never a password.").refine(
      (text) => !namesPassword(text),
      "This looks as if it held a password. Say who keeps it, never the password itself.",
    ),
    verifiedOn: day.nullable(),
    sourceAvailable: z.boolean().nullable(),
  })
  .refine(({ takenOn, verifiedOn }) => verifiedOn === null || verifiedOn >= takenOn, {
    path: ["verifiedOn"],
    error: "A copy cannot have run before it was taken.",
  });

/** What a person says of a function to call. */
export const addContact = z.strictObject({
  machineId: z.uuid(),
  /** For the machine's whole site, not only its line. */
  wholeSite: z.boolean(),
  role: words(80, "Name the function, never a person."),
  phone: z.string().trim().regex(PHONE, "Write a number: digits, spaces, and + before a country code."),
  hours: words(80, "Say when somebody answers."),
  note: words(200, "Write a note, or leave it empty.").nullable(),
});

export const removeCardEntry = z.strictObject({ id: z.uuid() });

export type AddBackup = z.output<typeof addBackup>;
export type AddContact = z.output<typeof addContact>;
