import { dead, missing } from "./gather";

/** Prints what a translator has to do: texts without German, then entries that are used no more. */
process.stdout.write(`${["Without German:", ...missing(), "", "Used no more:", ...dead()].join("\n")}\n`);
