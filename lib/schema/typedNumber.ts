import { z } from "zod";
import { marks } from "@/lib/kernel/locale";

/** A number as typed, in plain numerals with a point; or that it can be read in two ways; or no number at all. */
type TypedNumber =
  | { readonly kind: "number"; readonly plain: string }
  | { readonly kind: "ambiguous"; readonly whole: string; readonly parts: string }
  | { readonly kind: "other" };

const BLANKS = /(?<=\d)[\s\u00a0\u202f'’](?=\d{3})/g;
const ONE_MARK = /^([+-]?\d+)([.,])(\d+)$/;
const GROUPS = /^[+-]?\d{1,3}([.,])\d{3}(?:\1\d{3})+$/;
const BOTH_MARKS = /^[+-]?\d{1,3}(?:([.,])\d{3})+(?!\1)[.,]\d+$/;

/**
 * Reads a number by the marks of whoever typed it. The other mark is taken for what it can only be: `1,5` is one and a
 * half for everybody. `1,234` typed by somebody whose numbers have no comma can be either, and is not guessed.
 */
export function readTypedNumber(typed: string): TypedNumber {
  const text = typed.trim().replace(BLANKS, "");
  if (/^[+-]?\d+$/.test(text)) return { kind: "number", plain: text };
  if (GROUPS.test(text)) return { kind: "number", plain: text.replace(/[.,]/g, "") };
  if (BOTH_MARKS.test(text)) return { kind: "number", plain: withPoint(text) };
  const [, before, mark, after] = ONE_MARK.exec(text) ?? [];
  if (before === undefined || mark === undefined || after === undefined) return { kind: "other" };
  const plain = `${before}.${after}`;
  const isGroup = after.length === 3 && /^[+-]?[1-9]\d{0,2}$/.test(before);
  const { decimal, group } = marks();
  if (mark === decimal || !isGroup) return { kind: "number", plain };
  if (mark === group) return { kind: "number", plain: before + after };
  return { kind: "ambiguous", whole: before + after, parts: before + decimal + after };
}

/** The last mark of several is that of the decimals. */
function withPoint(text: string): string {
  const at = Math.max(text.lastIndexOf("."), text.lastIndexOf(","));
  return `${text.slice(0, at).replace(/[.,]/g, "")}.${text.slice(at + 1)}`;
}

/** A field for a number: plain numerals with a point where it is one, else the text as typed for the next check. */
export const typedNumber = z
  .string()
  .trim()
  .transform((text, context) => {
    const read = readTypedNumber(text);
    if (read.kind === "number") return read.plain;
    if (read.kind === "other") return text;
    context.addIssue(`This can be read in two ways: write ${read.whole} or ${read.parts}.`);
    return z.NEVER;
  });
