"use server";

import { action } from "@/lib/access/action";
import { takeSnapshotNow } from "@/lib/data/snapshot";
import { takeSnapshot } from "@/lib/schema/snapshot";

export const takeThisSnapshot = action({ needs: "plan:write", input: takeSnapshot, run: takeSnapshotNow });
