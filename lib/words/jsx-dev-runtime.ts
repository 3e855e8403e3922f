import { jsx, jsxs } from "@/lib/words/jsx-runtime";

export type { JSX } from "react/jsx-runtime";
export { Fragment } from "react/jsx-runtime";

type Called = [...made: Parameters<typeof jsx>, isStatic: boolean];

/** What the compiler calls while developing and testing; it tells whether the children were written out. */
export const jsxDEV = (...[type, props, key, isStatic]: Called) =>
  isStatic ? jsxs(type, props, key) : jsx(type, props, key);
