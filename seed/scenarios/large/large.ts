import { showcase } from "@/seed/scenarios/showcase/showcase";
import type { HeldTables } from "@/seed/tables";
export const large = (): HeldTables => showcase();
