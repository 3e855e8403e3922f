import { z } from "zod";

export const endSession = z.strictObject({ sessionId: z.string().min(1).max(100) });

export type EndSession = z.output<typeof endSession>;
