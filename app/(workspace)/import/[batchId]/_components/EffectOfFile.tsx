import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import { FigureEffectView } from "@/app/(workspace)/_components/FigureEffectView";
import type { Refusal } from "@/lib/access/action";
import type { ImportEffect } from "@/lib/data/importEffect";
import type { Result } from "@/lib/kernel/result";
import { writeRowList } from "@/lib/view/importRows";
import { significant } from "@/lib/view/number";

interface Props {
  /** Worked out while the rest of the page is shown. */
  readonly told: Promise<Result<ImportEffect, Refusal>>;
}

/** What loading the file would do to losses and places. */
export async function EffectOfFile({ told }: Props) {
  const answer = await told;
  if (!answer.ok)
    return (
      <Notice kind="info" title="What it would do cannot be worked out yet">
        {answer.error.reason}
      </Notice>
    );
  const { effect, seconds } = answer.value;
  return (
    <>
      <FigureEffectView effect={effect} />
      <p className="mt-2 text-ink-2 text-sm">
        Loaded for trial and rolled back, and the group evaluated without the file and with it, in{" "}
        {significant(seconds, 2)} s; nothing was stored.
      </p>
    </>
  );
}

interface AskProps {
  readonly batchId: string;
  readonly leftOut: readonly number[];
}

/** The way to ask for it: the page is there before the figures are. */
export function AskForEffect({ batchId, leftOut }: AskProps) {
  const without = leftOut.length === 0 ? "" : `&without=${encodeURIComponent(writeRowList(leftOut))}`;
  return (
    <p>
      <AsOfLink className="button" href={`/import/${batchId}?effect=yes${without}#effect`} scroll={false}>
        Work out losses and places
      </AsOfLink>
    </p>
  );
}
