/** Words whoever attacks an installation tries first: the product's, its trade's, and those that invite to one. */
const CONTEXT_WORDS = [
  ...["ebbline", "maintenance", "instandhaltung", "wartung", "retrofit", "spares", "machine", "maschine"],
  ...["drive", "motor", "servo", "plant", "werk", "factory", "admin", "password", "passwort", "kennwort"],
  ...["welcome", "willkommen", "secret", "geheim", "letmein", "changeme"],
];

const SHORTEST_WORD = 3;
/** Characters a password must have beside such words. */
const ENOUGH_BESIDE = 8;
/** Of the steps from character to character, the share that may be the same or the next one. */
const MOST_RUNS = 0.7;

/** Who a password is for: what they and their plant are called is tried first. */
export interface PasswordOwner {
  readonly email: string;
  readonly name: string;
  /** Codes and names of the sites. */
  readonly places: readonly string[];
}

/**
 * Why a password of the right length would soon be guessed, for whoever chose it; null when nothing speaks against it.
 *
 * No kinds of characters are asked for. Refused are runs and repetitions, what is hardly more than words of the
 * product, the plant and the person, and what is one or two of the commonest passwords with something at its ends.
 *
 * @param common The commonest passwords, in small letters.
 */
export function passwordProblem(
  password: string,
  owner: PasswordOwner,
  common: ReadonlySet<string>,
): string | null {
  const text = password.toLowerCase();
  if (isRun(text))
    return "This password is a run or a repetition, which is tried first. Use several words that have nothing to do with each other.";
  const words = [...CONTEXT_WORDS, ...wordsOf(owner)];
  if (beside(text, words) < ENOUGH_BESIDE)
    return "This password is hardly more than words of Ebbline, your plant or your name, which are tried first. Use several words that have nothing to do with them.";
  if (isCommon(text, common) || isCommon(text.replace(/^[^\p{L}]+|[^\p{L}]+$/gu, ""), common))
    return "This password is made of the commonest ones, which are tried first. Use several words that have nothing to do with each other.";
  return null;
}

function isRun(text: string): boolean {
  if (/^(.{1,6}?)\1+.{0,3}$/u.test(text)) return true;
  const codes = [...text].map((letter) => letter.codePointAt(0) ?? 0);
  const steps = codes.slice(1).map((code, i) => code - (codes[i] ?? 0));
  return steps.filter((step) => Math.abs(step) <= 1).length > MOST_RUNS * steps.length;
}

function wordsOf({ email, name, places }: PasswordOwner): string[] {
  return [email, name, ...places]
    .flatMap((text) => text.toLowerCase().split(/[^\p{L}]+/u))
    .filter((word) => word.length >= SHORTEST_WORD);
}

/** Characters left when the words are taken out, the longest first; all of them where none of the words stands. */
function beside(text: string, words: readonly string[]): number {
  const longestFirst = [...words].sort((a, b) => b.length - a.length);
  const left = longestFirst.reduce((rest, word) => rest.replaceAll(word, ""), text);
  return left === text ? ENOUGH_BESIDE : left.length;
}

/** Whether a text is one of the passwords, or two of them side by side. */
function isCommon(text: string, common: ReadonlySet<string>): boolean {
  if (common.has(text)) return true;
  for (let at = SHORTEST_WORD; at <= text.length - SHORTEST_WORD; at += 1)
    if (common.has(text.slice(0, at)) && common.has(text.slice(at))) return true;
  return false;
}
