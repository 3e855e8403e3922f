import type { Actor } from "@/lib/access/actor";
import { readImport } from "@/lib/data/importView";
import type { ImportView } from "@/lib/view/importView";

/** Looks at a file as its page does, again and again, until its reading has ended. */
export async function untilRead(
  actor: Actor,
  batchId: string,
  leftOut: readonly number[] = [],
): Promise<ImportView | null> {
  for (;;) {
    const view = await readImport(actor, batchId, leftOut);
    if (view?.progress?.state !== "reading") return view;
  }
}
