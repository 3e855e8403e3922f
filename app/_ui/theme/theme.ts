/** Name of the cookie that keeps a person's choice. */
export const THEME_COOKIE = "theme";

export const THEMES = ["light", "dark"] as const;

/** A chosen look; without a choice the device decides. */
export type Theme = (typeof THEMES)[number];

/** Reads a stored word as a theme; anything else is no choice. */
export function themeOf(word: string | undefined): Theme | null {
  return THEMES.find((theme) => theme === word) ?? null;
}
