import { z } from "zod";

const words = (most: number) =>
  z.string().trim().min(1, "Write a word, or leave it empty.").max(most, `At most ${most} characters.`);

/** What is said of a panel. */
const panelWords = z.strictObject({
  designation: z
    .string()
    .trim()
    .regex(/^\S{1,40}$/, "Write the designation on its door without spaces, such as +A1."),
  name: words(80).nullable(),
  location: words(160).nullable(),
});

export const addPanel = z.strictObject({ machineId: z.uuid(), ...panelWords.shape });
/** A change of a panel: what the person saw, and what should stand instead. */
export const changePanel = z.strictObject({ panelId: z.uuid(), seen: panelWords, wanted: panelWords });
export const onePanel = z.strictObject({ id: z.uuid() });

const MOST_PLACES = 2000;
const places = z
  .array(z.strictObject({ positionId: z.uuid(), panelId: z.uuid().nullable() }))
  .max(MOST_PLACES)
  .readonly();

/** In which panel places of a machine stand: as the person saw it, and as it should be; null is in none known. */
export const placeInPanels = z.strictObject({ machineId: z.uuid(), seen: places, wanted: places });

export type PanelWords = z.output<typeof panelWords>;
export type AddPanel = z.output<typeof addPanel>;
export type ChangePanel = z.output<typeof changePanel>;
export type PlaceInPanels = z.output<typeof placeInPanels>;
