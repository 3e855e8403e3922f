import type { Metadata } from "next";
import { inWords } from "@/lib/words/say";

/** The title of a page, in the words of whoever opens it. */
export const titled = (title: string) => (): Metadata => ({ title: inWords(title) });
