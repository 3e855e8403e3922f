import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Column } from "@/app/_ui/DataTable/column";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { StaleMark } from "@/app/_ui/StaleMark";
import { DutyMark } from "@/app/(workspace)/_components/DutyMark";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { ChangeObligation } from "@/app/(workspace)/dates/_components/ChangeObligation";
import { RemoveObligation } from "@/app/(workspace)/dates/_components/RemoveObligation";
import { SettleObligation } from "@/app/(workspace)/dates/_components/SettleObligation";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { evidenceMark } from "@/lib/view/evidence";
import { type Obligation, type ObligationPlace, obligationWords } from "@/lib/view/obligation";
import { day } from "@/lib/view/time";

interface Around {
  readonly places: readonly ObligationPlace[];
  readonly asOf: IsoDate;
  readonly today: IsoDate;
  readonly tell: (done: Done) => void;
}

/** The columns of the safety and legal dates; those who may change them have one more. */
export function obligationColumns(around: Around): readonly Column<Obligation>[] {
  const changes: Column<Obligation> = {
    key: "change",
    header: "Change",
    value: () => null,
    cell: (duty) => <Changes duty={duty} {...around} />,
    priority: 1,
    width: "8rem",
  };
  return [
    {
      key: "due",
      header: "Due on",
      value: ({ dueOn }) => dueOn,
      cell: ({ dueOn, doneOn }) => (
        <span className="whitespace-nowrap">
          {day(dueOn)} {doneOn === null && dueOn < around.asOf ? <StaleMark text="Overdue" /> : null}
        </span>
      ),
    },
    {
      key: "of",
      header: "Of",
      value: ({ line, siteCode }) => line?.code ?? siteCode,
      cell: ({ line, siteCode }) =>
        line ? (
          <AsOfLink href={`/lines/${line.code}#binding`}>{line.code}</AsOfLink>
        ) : (
          `${siteCode}, whole site`
        ),
      priority: 1,
      width: "6rem",
    },
    {
      key: "what",
      header: "What must be done",
      value: ({ title }) => title,
      cell: ({ kind, title, dueOn }) => (
        <>
          <DutyMark {...{ kind, title, dueOn }} /> {obligationWords(kind).name}: {title}
        </>
      ),
      priority: 1,
      width: "16rem",
    },
    {
      key: "source",
      header: "Source and owner",
      value: ({ source }) => source,
      cell: (duty) => <Source duty={duty} />,
      width: "14rem",
    },
    {
      key: "state",
      header: "State",
      value: ({ doneOn }) => doneOn,
      cell: ({ doneOn }) => (doneOn === null ? "open" : `done on ${day(doneOn)}`),
    },
    ...(around.places.length === 0 ? [] : [changes]),
  ];
}

function Source({ duty: { source, evidence, owner, recordedOn } }: { readonly duty: Obligation }) {
  return (
    <>
      {source} <EvidenceMark {...evidenceMark(evidence)} />
      <span className="block text-ink-2 text-sm">
        {owner ?? "Nobody answers for it"}; recorded on {day(recordedOn)}
      </span>
    </>
  );
}

function Changes({ duty, places, today, tell }: Around & { readonly duty: Obligation }) {
  if (!places.some(({ id }) => id === duty.siteId)) return null;
  return (
    <span className="flex flex-wrap gap-2">
      <SettleObligation {...{ duty, today, tell }} />
      <ChangeObligation {...{ duty, places, tell }} />
      <RemoveObligation {...{ duty, tell }} />
    </span>
  );
}
