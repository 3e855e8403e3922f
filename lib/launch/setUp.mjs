import { register } from "tsx/esm/api";

// The packages are there: they came with the image.
register();
await import("./setUp.ts");
