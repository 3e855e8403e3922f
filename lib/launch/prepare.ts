import { mkdirSync } from "node:fs";
import { build, generateClient } from "./build";
import { stateFolder } from "./folders";
import { live } from "./live";

/** Everything a start would build, so that it finds it done; for a container's image. */
await live(async ({ stopping }) => {
  mkdirSync(stateFolder, { recursive: true });
  await generateClient(stopping);
  await build(stopping);
  return 0;
}, 1);
