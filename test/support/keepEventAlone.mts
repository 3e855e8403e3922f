import { database } from "@/lib/data/client";
import { keepEvent } from "@/lib/data/eventCapture";
import { StillBeingDone } from "@/lib/data/interface/keptAnswer";
import { captureEvent } from "@/lib/schema/event";

/**
 * A process of its own that records the event told as the actor given, and says on standard output what came of it.
 *
 * Told that the same request is still being done it sends it again, as a caller should.
 */
const [asked = "{}"] = process.argv.slice(2);
const { actor, told } = JSON.parse(asked);
for (;;) {
  try {
    process.stdout.write(JSON.stringify(await keepEvent(actor, captureEvent.parse(told))));
    break;
  } catch (error) {
    if (!(error instanceof StillBeingDone)) throw error;
  }
}
await database().$disconnect();
