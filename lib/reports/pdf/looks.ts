/** Inks of the paper: told apart by how light they are, so that they read in grey. */
export const INK = "#14222b";
export const INK_2 = "#45545d";
export const RULE = "#a9b4b7";
export const SHADE = "#eef1f1";
export const PALE = "#bdbae2";
export const MID = "#544ca3";
export const DARK = "#342d78";
export const STAGE_LINE = "#1d5c70";
export const STAGE_FILLS = ["#ffffff", "#d5e7ec", "#aed2dc", "#7db7c7", "#1f6f88", "#0b3f50"] as const;

/** Paper sizes in points, with the margins that leave room for head and foot. */
export const MARGIN = 30;
