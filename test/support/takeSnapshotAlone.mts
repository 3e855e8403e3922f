import { database } from "@/lib/data/client";
import { takeSnapshot } from "@/lib/data/group/takeSnapshot";

/** A process of its own that takes the snapshot of the day named, and tells on standard output what it got. */
const [asOf = ""] = process.argv.slice(2);
const taken = await takeSnapshot(asOf, null);
process.stdout.write(JSON.stringify(taken));
await database().$disconnect();
