import { Suspense } from "react";
import type { Refusal } from "@/lib/access/action";
import type { ImportEffect } from "@/lib/data/importEffect";
import type { FileSource } from "@/lib/data/importSources";
import type { Result } from "@/lib/kernel/result";
import type { ImportHead, StagedImport } from "@/lib/view/importView";
import { AskForEffect, EffectOfFile } from "./EffectOfFile";
import { SourceOfFile } from "./SourceOfFile";
import { StagedFile } from "./StagedFile";

interface Props {
  readonly head: ImportHead;
  readonly staged: StagedImport;
  readonly source: FileSource | null;
  /** The effect on the figures, where it was asked for; it comes after the page. */
  readonly effect: Promise<Result<ImportEffect, Refusal>> | null;
}

/** A file that waits, with the system it comes from and, when asked for, what it would do to the figures. */
export function WaitingFile({ head, staged, source, effect }: Props) {
  const { id: batchId, register } = head;
  return (
    <StagedFile
      {...{ batchId, register, staged }}
      source={source ? <SourceOfFile key={source.sourceId} batchId={batchId} source={source} /> : null}
      effect={
        effect ? (
          <Suspense fallback={<p>Loading it for trial and working the figures out…</p>}>
            <EffectOfFile told={effect} />
          </Suspense>
        ) : (
          <AskForEffect batchId={batchId} leftOut={staged.leftOut} />
        )
      }
    />
  );
}
