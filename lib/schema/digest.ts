import { z } from "zod";

/** The site a person wants the week's mail of; null wants none. */
export const setDigest = z.strictObject({ siteId: z.uuid("Choose a site.").nullable() });

export type SetDigest = z.output<typeof setDigest>;
