import { AsyncLocalStorage } from "node:async_hooks";
import { type Locale, PLAIN } from "@/lib/kernel/locale";

const READING = Symbol.for("ebbline.reading");

const world = globalThis as { [READING]?: AsyncLocalStorage<Locale> };

/** Who is read for in the present request or job; one for the process, though the build copies this module. */
function reading(): AsyncLocalStorage<Locale> {
  world[READING] ??= new AsyncLocalStorage();
  return world[READING];
}

/** How the present request or job is to be written. */
export const presentReader = (): Locale => reading().getStore() ?? PLAIN;

/** Runs something for a reader: all it writes, also later, is in their words and numbers. */
export const readAs = <T>(reader: Locale, run: () => T): T => reading().run(reader, run);

/** Runs what is stored or sent to machines: English, with a decimal point, whoever asked for it. */
export const plainly = <T>(run: () => T): T => readAs(PLAIN, run);
