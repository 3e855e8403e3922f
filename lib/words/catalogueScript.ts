import { createHash } from "node:crypto";
import type { Language } from "@/lib/kernel/locale";
import { catalogueOf } from "@/lib/words/catalogue";

/** The words of a language as a script for the browser, under an address that changes when they do. */
interface CatalogueScript {
  readonly address: string;
  readonly text: string;
}

const made = new Map<Language, CatalogueScript>();

/** The script of a language; the same for every reader, so browsers keep it. */
export function catalogueScript(language: Language): CatalogueScript {
  const known = made.get(language);
  if (known) return known;
  const text = `self[Symbol.for("ebbline.catalogue")]=${JSON.stringify(catalogueOf(language))};`;
  const hash = createHash("sha256").update(text).digest("hex").slice(0, 16);
  const script = { address: `/api/words/${language}.${hash}.js`, text };
  made.set(language, script);
  return script;
}
