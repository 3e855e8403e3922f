import { runWhenReady } from "./ready.mjs";

await runWhenReady("./test.ts");
