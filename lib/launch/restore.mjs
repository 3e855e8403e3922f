import { runWhenReady } from "./ready.mjs";

await runWhenReady("./restore.ts");
