import { runWhenReady } from "./ready.mjs";

await runWhenReady("./start.ts");
