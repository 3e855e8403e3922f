import { z } from "zod";

/** The reason of a change, in the words of who makes it; empty or left out gives none. */
export const why = z.string().trim().max(500, "Write the reason in at most 500 letters.").optional();

/** The reason as it is kept; null where none was given. */
export const reasonGiven = (said: string | undefined): string | null => said || null;
