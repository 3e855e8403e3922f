import { z } from "zod";

/** What ending a session asks: the own password, empty for who has none here. */
export const endOthers = z.strictObject({ password: z.string().max(128) });

export const endSession = endOthers.extend({ sessionId: z.string().min(1).max(100) });

export type EndOthers = z.output<typeof endOthers>;

export type EndSession = z.output<typeof endSession>;
