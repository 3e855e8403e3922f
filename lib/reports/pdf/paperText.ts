/** Characters the paper's letters lack, and what stands for them there. */
const INSTEAD: Readonly<Record<string, string>> = {
  "\u202f": "\u00a0",
  "→": "to",
  "▲": "!",
  "▼": "v",
  "●": "•",
  "○": "–",
  "\t": " ",
  "≥": ">=",
  "≤": "<=",
};

/** A text as it can be set on paper; control characters, which no letter stands for, become spaces. */
export function paperText(text: string): string {
  return [...text].map((letter) => INSTEAD[letter] ?? (isControl(letter) ? " " : letter)).join("");
}

const isControl = (letter: string) => letter < " " || letter === "\u007f";
