"use server";

import { registerFile } from "@/app/(workspace)/import/registerFile";
import { action } from "@/lib/access/action";
import { chooseImportReading, commitImport, stageImport, undoImport } from "@/lib/data/import";
import { discardImport } from "@/lib/data/importDiscard";
import { chooseReading, commitBatch, discardBatch, undoBatch } from "@/lib/schema/import";

export const handInFile = action({
  needs: "register:import",
  input: registerFile,
  run: async (actor, { register, file }) =>
    stageImport(actor, {
      register,
      fileName: file.name,
      bytes: new Uint8Array(await file.arrayBuffer()),
    }),
});

export const readAgain = action({
  needs: "register:import",
  input: chooseReading,
  run: chooseImportReading,
});

export const loadFile = action({ needs: "register:import", input: commitBatch, run: commitImport });

export const takeFileBack = action({ needs: "register:import", input: undoBatch, run: undoImport });

export const dropFile = action({ needs: "register:import", input: discardBatch, run: discardImport });
