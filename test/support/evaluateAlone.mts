import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";

/** A process of its own that asks for the evaluation of the day named, and tells on standard output what it got. */
const [asOf = ""] = process.argv.slice(2);
const { id, dataVersion } = await currentEvaluation(asOf);
process.stdout.write(JSON.stringify({ id, dataVersion }));
await database().$disconnect();
