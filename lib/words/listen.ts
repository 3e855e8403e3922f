import { aroundRequests } from "@/lib/access/aroundRequests";
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
  aroundRequests(({ headers }, _, pass) => readAs(wishOf(headers), pass));
}
