import type { ReactNode } from "react";
import { Fragment, jsx } from "react/jsx-runtime";
import { marks } from "@/lib/kernel/locale";
import type { Speaker } from "@/lib/words/speaker";

type Props = Readonly<Record<string, unknown>>;

/** Attributes whose text a person reads or hears. */
const SPOKEN = [
  "title",
  "aria-label",
  "aria-description",
  "aria-roledescription",
  "aria-valuetext",
  "placeholder",
  "alt",
  "textValue",
] as const;

/** What these hold is no language. */
const SILENT: ReadonlySet<unknown> = new Set(["script", "style", "code", "pre"]);

/** First of the letters that stand for elements inside a sentence; nothing else uses this range. */
const FIRST_PLACE = 0xe000;
const PLACES = /([\ue000-\uf8ff])/;

/**
 * Whether text handed to an element of this type is shown as it is: the page's own elements, and parts of packages,
 * which hand it on to elements of their own. Parts of this product are functions and show it by an element in the end.
 */
const showsText = (type: unknown): boolean => typeof type !== "function" && !SILENT.has(type);

/** The properties of an element with its texts in the reader's words; the same object where nothing changes. */
export function inReadersWords(type: unknown, props: Props, say: Speaker): Props {
  if (!showsText(type) || props.translate === "no") return props;
  const changed: Record<string, unknown> = {};
  for (const name of SPOKEN) {
    const text = props[name];
    if (typeof text === "string") changed[name] = say(text);
  }
  const children = said(props.children, say);
  if (children !== props.children) changed.children = children;
  return Object.keys(changed).length === 0 ? props : { ...props, ...changed };
}

function said(children: unknown, say: Speaker): unknown {
  if (typeof children === "string") return say(children);
  if (!Array.isArray(children) || !children.some((child) => typeof child === "string")) return children;
  return sentence(children, say);
}

/** The children of an element as one sentence, so that the order of its words and elements may change. */
function sentence(children: readonly unknown[], say: Speaker): unknown {
  const elements: unknown[] = [];
  const text = children
    .map((child) => {
      if (typeof child === "string") return child;
      if (typeof child === "number") return String(child).replace(".", marks().decimal);
      if (child === null || child === undefined || typeof child === "boolean") return "";
      return String.fromCharCode(FIRST_PLACE + elements.push(child) - 1);
    })
    .join("");
  if (elements.length === 0) return [say(text)];
  return say(text)
    .split(PLACES)
    .filter((piece) => piece !== "")
    .map((piece) => (PLACES.test(piece) ? placed(elements, piece.charCodeAt(0) - FIRST_PLACE) : piece));
}

/** Named by its place in English, so that it stays the same element wherever the sentence puts it. */
function placed(elements: readonly unknown[], at: number): unknown {
  return jsx(Fragment, { children: elements[at] as ReactNode }, `place-${at}`);
}
