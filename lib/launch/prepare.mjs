import { runWhenReady } from "./ready.mjs";

await runWhenReady("./prepare.ts");
