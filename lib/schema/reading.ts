import { z } from "zod";
import { LANGUAGES, NUMBER_STYLES } from "@/lib/kernel/locale";

/** The language and the marks of numbers a person reads; null follows the device and the language. */
export const setReading = z.strictObject({
  language: z.enum(LANGUAGES).nullable(),
  numbers: z.enum(NUMBER_STYLES).nullable(),
});

export type SetReading = z.output<typeof setReading>;
