import { z } from "zod";

/** A whole number as typed, 0 or more; empty is null. */
export function readWhole(noun: string, most: number) {
  return z
    .string()
    .trim()
    .regex(/^\d{0,9}$/, `Write a whole number of ${noun}, or leave it empty.`)
    .refine((text) => Number(text) <= most, `Write at most ${most} ${noun}.`)
    .transform((text) => (text === "" ? null : Number(text)));
}
