import http, { type IncomingMessage } from "node:http";
import { READER } from "@/lib/kernel/locale";
import { catalogueOf } from "@/lib/words/catalogue";
import { presentReader, readAs } from "@/lib/words/reading";
import { SPEAKER } from "@/lib/words/say";
import { makeSpeaker, type Speaker } from "@/lib/words/speaker";
import { wishOf } from "@/lib/words/wish";

interface World {
  [READER]?: typeof presentReader;
  [SPEAKER]?: () => Speaker | null;
}

const world = globalThis as World;

let german: Speaker | undefined;

/** The speaker of the present reader, made when the first one asks. */
function presentSpeaker(): Speaker | null {
  if (presentReader().language !== "de") return null;
  german ??= makeSpeaker(catalogueOf("de"));
  return german;
}

/** From now on each request of this process is answered in the language its reader wishes. */
export function listen(): void {
  if (world[READER]) return;
  world[READER] = presentReader;
  world[SPEAKER] = presentSpeaker;
  const { emit } = http.Server.prototype;
  http.Server.prototype.emit = function (this: http.Server, event: string | symbol, ...rest: unknown[]) {
    const pass = () => Reflect.apply(emit, this, [event, ...rest]) as boolean;
    return event === "request" ? readAs(wishOf((rest[0] as IncomingMessage).headers), pass) : pass();
  };
}
