import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Where Ebbline's sources are. */
export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));

/** What Ebbline keeps for itself between starts: database, secret, note of the last build. */
export const stateFolder = join(projectFolder, ".ebbline");
