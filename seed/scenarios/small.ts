import { showcase } from "@/seed/scenarios/showcase/showcase";
import type { HeldTables } from "@/seed/tables";
export const small = (): HeldTables => showcase();
