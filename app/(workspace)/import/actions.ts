"use server";

import { action } from "@/lib/access/action";
import { chooseImportReading, commitImport, undoImport } from "@/lib/data/import";
import { discardImport } from "@/lib/data/importDiscard";
import { chooseImportSource } from "@/lib/data/importSourceChange";
import { readImportAgain, stopImport, takeUpWaiting } from "@/lib/data/importWork";
import { chooseReading, commitBatch, discardBatch, undoBatch, whichBatch } from "@/lib/schema/import";
import { chooseSource } from "@/lib/schema/importSource";

export const readAgain = action({
  needs: "register:import",
  input: chooseReading,
  run: chooseImportReading,
});

export const loadFile = action({ needs: "register:import", input: commitBatch, run: commitImport });

export const takeFileBack = action({ needs: "register:import", input: undoBatch, run: undoImport });

export const dropFile = action({ needs: "register:import", input: discardBatch, run: discardImport });

export const stopWork = action({ needs: "register:import", input: whichBatch, run: stopImport });

export const readOnceMore = action({ needs: "register:import", input: whichBatch, run: readImportAgain });

export const takeUpRows = action({ needs: "register:import", input: whichBatch, run: takeUpWaiting });

export const chooseThisSource = action({
  needs: "register:import",
  input: chooseSource,
  run: chooseImportSource,
});
