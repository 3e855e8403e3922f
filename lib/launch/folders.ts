import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Where Ebbline's sources are. */
export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));

/** What Ebbline keeps for itself between starts: database, secret, note of the last build. */
export const stateFolder = join(projectFolder, ".ebbline");

/** The embedded database in use: the demonstration and a plant's own data never share one, so trying one leaves the other alone. */
export const databaseName = (demo: boolean) => (demo ? "ebbline_demo" : "ebbline");

/** The account the application uses on a database Ebbline makes itself; it owns nothing there. */
export const APP_ACCOUNT = "ebbline_app";
