import { runWhenReady } from "./ready.mjs";

await runWhenReady("./backup.ts");
