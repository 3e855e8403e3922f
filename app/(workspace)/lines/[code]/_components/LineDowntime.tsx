import { DowntimeTable } from "@/app/(workspace)/_components/DowntimeTable";
import type { LineDossier } from "@/lib/view/lineDossier";
import { lineDowntime } from "@/lib/view/lineDowntime";

/** How long the line stood by class of item, waiting and work apart. */
export function LineDowntime({ line }: { readonly line: LineDossier }) {
  const groups = lineDowntime(line.events, line.assumptions);
  if (groups.length === 0)
    return <p>No stop with its hours is recorded here in five years; the belief of each class stands in.</p>;
  return (
    <>
      <DowntimeTable caption={`Stops of ${line.code} by class and spare`} groups={groups} />
      <p className="measure mt-2 text-ink-2 text-sm">
        The rows are among the <a href="#events">events below</a>. The loss takes the stops of each class at
        all sites, pulled to its belief. Without a spare the belief hangs on the sources still open to a part
        and stands on its own page.
      </p>
    </>
  );
}
