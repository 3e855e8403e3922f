import {
  type Language,
  type Locale,
  languageOf,
  type NumberStyle,
  numberStyleOf,
  PLAIN,
  USUAL_NUMBERS,
} from "@/lib/kernel/locale";

/** Name of the cookie that tells how this device reads: `de.space-comma`. */
export const READING_COOKIE = "reading";

interface Asked {
  readonly cookie?: string | undefined;
  readonly "accept-language"?: string | undefined;
}

/** How whoever sent a request wants to read: by the cookie, else by the first language of the device spoken here. */
export function wishOf({ cookie = "", "accept-language": accepted = "" }: Asked): Locale {
  const [, kept = ""] = new RegExp(`(?:^|;\\s*)${READING_COOKIE}=([\\w.-]+)`).exec(cookie) ?? [];
  return localeOf(kept) ?? usual(firstSpoken(accepted)) ?? PLAIN;
}

/** What a person chose, where they chose; null follows the device and the language. */
export interface Wish {
  readonly language: Language | null;
  readonly numbers: NumberStyle | null;
}

/** How somebody of a wish reads on a device. */
export function readerOf({ language, numbers }: Wish, device: Locale): Locale {
  if (language === null) return { ...device, numbers: numbers ?? device.numbers };
  return { language, numbers: numbers ?? USUAL_NUMBERS[language] };
}

/** A locale as kept in the cookie. */
export const cookieOf = ({ language, numbers }: Locale): string => `${language}.${numbers}`;

function localeOf(kept: string): Locale | null {
  const [language, numbers] = [languageOf(kept.split(".")[0]), numberStyleOf(kept.split(".")[1])];
  return language && numbers ? { language, numbers } : null;
}

const usual = (language: Language | null): Locale | null =>
  language && { language, numbers: USUAL_NUMBERS[language] };

/** The language of `de-AT,de;q=0.9,en;q=0.8` most wished for; devices name them in that order. */
function firstSpoken(accepted: string): Language | null {
  for (const range of accepted.split(",")) {
    const language = languageOf(range.trim().slice(0, 2).toLowerCase());
    if (language) return language;
  }
  return null;
}
