import * as react from "react/jsx-runtime";
import { inReadersWords } from "@/lib/words/element";
import { speaker } from "@/lib/words/say";

export type { JSX } from "react/jsx-runtime";
export { Fragment } from "react/jsx-runtime";

type Make = typeof react.jsx;

/** React's own, after the texts of the element were put into the words of whoever reads. */
const speaking =
  (make: Make): Make =>
  (type, props, key) => {
    const say = speaker();
    return make(
      type,
      say === null ? props : inReadersWords(type, props as Record<string, unknown>, say),
      key,
    );
  };

export const jsx = speaking(react.jsx);
export const jsxs = speaking(react.jsxs);
