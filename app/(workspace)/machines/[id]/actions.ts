"use server";

import { action } from "@/lib/access/action";
import * as entries from "@/lib/data/cardChange";
import * as schema from "@/lib/schema/cardEntry";

export const addCopy = action({ needs: "line:write", input: schema.addBackup, run: entries.addBackup });
export const removeCopy = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: entries.removeBackup,
});
export const addNumber = action({ needs: "line:write", input: schema.addContact, run: entries.addContact });
export const removeNumber = action({
  needs: "line:write",
  input: schema.removeCardEntry,
  run: entries.removeContact,
});
