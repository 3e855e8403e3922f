import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Notice } from "@/app/_ui/Notice";
import { ControllerVerdicts } from "@/app/(workspace)/lines/[code]/_components/ControllerVerdicts";
import { WorkCautions } from "@/app/(workspace)/lines/[code]/_components/WorkCautions";
import type { JudgedLine } from "@/lib/retrofit/compatibility";
import { firmwareWord } from "@/lib/retrofit/firmwareLevel";
import type { LineDossier } from "@/lib/view/lineDossier";
import { blockerCounts, NO_CONTROLLER, STANDING_WORDS } from "@/lib/view/standing";

/** What stands in the way of new drives on the line's controllers, by the rules in force, and what unblocks it. */
export function Blockers({ line }: { readonly line: LineDossier }) {
  const { compatibility, machines } = line;
  const bare = machines.filter((machine) => machine.controller === null).map(({ code }) => code);
  return (
    <>
      <StandingSentence judged={compatibility} />
      <ul className="measure mb-3 list-disc pl-5">
        {blockerCounts(compatibility.controllers).map(({ blocker, words, ways }) => (
          <li key={blocker}>
            <strong>{blocker}</strong>: {words}.{" "}
            <span className="text-ink-2">{ways.length === 0 ? "" : `Way out: ${ways.join(" ")}`}</span>
          </li>
        ))}
      </ul>
      {compatibility.controllers.length === 0 ? null : (
        <ControllerVerdicts code={line.code} controllers={compatibility.controllers} />
      )}
      {bare.length === 0 ? null : (
        <Notice kind="info" title={NO_CONTROLLER}>
          {`${bare.join(", ")} have no controller on record.`}
        </Notice>
      )}
      <WorkCautions />
    </>
  );
}

function StandingSentence({ judged }: { readonly judged: JudgedLine }) {
  const { standing, lead } = judged;
  return (
    <p className="measure mb-3">
      {standing === null || lead === null ? (
        NO_CONTROLLER
      ) : (
        <>
          <strong>{STANDING_WORDS[standing]}</strong>, by the leading controller {lead.facts.designation} (
          {lead.facts.model}, level {firmwareWord(lead.facts.level)})
        </>
      )}
      . Judged now by the <AsOfLink href="/rules">compatibility rules</AsOfLink> in force; what nobody has
      read is unknown and never clear.
    </p>
  );
}
