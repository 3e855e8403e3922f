import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { keepEvent, takeEventBack } from "@/lib/data/eventCapture";
import { commitImport, undoImport } from "@/lib/data/import";
import { discardOnce, readImportHead, stageOnce } from "@/lib/data/importOnce";
import { changeStock } from "@/lib/data/stockChange";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { noQuery, type Operation, operation } from "@/lib/interface/operation";
import * as writes from "@/lib/interface/shapes/writes";
import { err, ok, type Result } from "@/lib/kernel/result";
import { captureEvent, type TypedEvent } from "@/lib/schema/event";

const finished = { done: true } as const;

const noFile: Refusal = {
  code: "missing",
  reason: "There is no such file that you may see.",
};

/** The same told as on the screen, so that the same rules judge it. */
function typed(told: z.output<typeof writes.toldEvent>): TypedEvent {
  const { spareAtHand, stockLotId, downtimeHours, logisticHours, ...rest } = told;
  return {
    ...rest,
    downtimeHours: downtimeHours ?? "",
    logisticHours: logisticHours ?? "",
    spareAtHand: spareAtHand === null ? "" : spareAtHand ? "yes" : "no",
    lotId: stockLotId ?? "",
  };
}

async function recordEvent(actor: Actor, told: z.output<typeof writes.toldEvent>) {
  const read = captureEvent.safeParse(typed(told));
  if (read.success) return keepEvent(actor, read.data);
  const fields = Object.fromEntries(read.error.issues.map(({ path, message }) => [path.join("."), message]));
  const reason = "Some of the event cannot be used. Nothing was kept.";
  return err<Refusal>({ code: "invalid", reason, fields });
}

async function done(change: Promise<Result<unknown, Refusal>>): Promise<Result<typeof finished, Refusal>> {
  const changed = await change;
  return changed.ok ? ok(finished) : changed;
}

const file = z.strictObject({
  register: z
    .enum(Object.keys(REGISTERS) as [RegisterKey, ...RegisterKey[]], "Name a register.")
    .describe("Which register the file holds."),
  fileName: z.string().trim().min(1, "Say what the file is called.").max(200).describe("With its ending."),
});

const importChange = { needs: "register:import", query: noQuery } as const;

/** Everything other systems may write. */
export const WRITES: readonly Operation[] = [
  operation({
    ...{ method: "POST", path: "/events", name: "recordEvent", needs: "event:write", status: 201 },
    title: "Record an event",
    text: 'A unit that left its place, with the unit put in and the spare used; the rules of the screen hold. Refused when another event lies within three days at the place, unless "sure".',
    ...{ query: noQuery, body: writes.toldEvent, answer: writes.keptEvent, answerName: "KeptEvent" },
    run: (actor, { body }) => recordEvent(actor, body),
  }),
  operation({
    ...{ method: "DELETE", path: "/events/{id}", name: "takeEventBack", needs: "event:write" },
    title: "Take an event back",
    text: "With all that was moved for it; refused once somebody built on it.",
    ...{ query: noQuery, body: null, answer: writes.done, answerName: "Done" },
    run: (actor, { id }) => done(takeEventBack(actor, { eventId: id })),
  }),
  operation({
    ...{ method: "PATCH", path: "/stock-lots/{id}", name: "changeStockLot", needs: "stock:write" },
    title: "Set a stock lot",
    text: 'Pieces, state, last power-up and day of the count; only while the lot stands as "seen".',
    ...{ query: noQuery, body: writes.changedLot, answer: writes.done, answerName: "Done" },
    run: (actor, { id, body }) => done(changeStock(actor, { lotId: id, ...body })),
  }),
  operation({
    ...{ method: "POST", path: "/imports", name: "stageImport", needs: "register:import", status: 201 },
    title: "Hand in a register file",
    text: "CSV or XLSX as it is. It is kept, read and shown on the import page; nothing is taken over before it is loaded.",
    ...{ query: file, body: "file", answer: writes.stagedImport, answerName: "StagedImport" },
    run: (actor, { query, body }) =>
      stageOnce(actor, { ...query, bytes: body as unknown as Uint8Array<ArrayBuffer> }),
  }),
  operation({
    ...{ method: "GET", path: "/imports/{id}", name: "readImport", needs: "register:import" },
    title: "What became of a file",
    text: "Waiting, loaded or taken back, with the number of things it touched.",
    ...{ query: noQuery, body: null, answer: writes.importHead, answerName: "Import" },
    run: async (actor, { id }) => {
      const head = await readImportHead(actor, id);
      return head ? ok(head) : err(noFile);
    },
  }),
  operation({
    ...{ method: "POST", path: "/imports/{id}/load", name: "loadImport", ...importChange },
    title: "Load a file",
    text: "Takes a waiting file over, wholly or not at all, without rows in error and those left out. Refused while it can be read in two ways: a person answers that on the import page.",
    ...{ body: writes.wantedCommit, answer: writes.loaded, answerName: "Loaded" },
    run: (actor, { id, body }) => commitImport(actor, { batchId: id, leftOut: body.leftOut }),
  }),
  operation({
    ...{ method: "POST", path: "/imports/{id}/take-back", name: "takeImportBack", ...importChange },
    title: "Take a loaded file back",
    text: "What it added goes, what it changed is as before; refused once somebody built on it.",
    ...{ body: null, answer: writes.loaded, answerName: "Loaded" },
    run: (actor, { id }) => undoImport(actor, { batchId: id }),
  }),
  operation({
    ...{ method: "DELETE", path: "/imports/{id}", name: "dropImport", ...importChange },
    title: "Drop a waiting file",
    text: "One that was never loaded.",
    ...{ body: null, answer: writes.done, answerName: "Done" },
    run: (actor, { id }) => done(discardOnce(actor, { batchId: id })),
  }),
];
