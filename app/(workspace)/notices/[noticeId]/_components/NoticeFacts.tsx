import type { NoticeFile } from "@/lib/data/notices";
import { evidenceView } from "@/lib/view/evidence";
import { day } from "@/lib/view/time";

/** What was typed for a notice, by whom, and the source it rests on. */
export function NoticeFacts({ notice }: { readonly notice: NoticeFile }) {
  const { cycle, file } = notice;
  const rows = [
    ["Notice given on", day(notice.noticeOn)],
    ["Parts as written", notice.patterns.split("\n").join(", ")],
    ["Successor as written", notice.successor || "none named"],
    [
      "Weeks before an order leaves",
      `quotation ${cycle.quoteWeeks}, approval ${cycle.approvalWeeks}, writing ${cycle.purchaseWeeks}`,
    ],
    ["Read on", day(notice.checkedOn)],
    ["Known here since", `${day(notice.recordedOn)}, recorded by ${notice.recordedBy}`],
    ["How well", evidenceView(notice.evidence).text],
    ["Note", notice.note || "none"],
    ...(notice.takenBack ? [["Taken back by", notice.takenBackBy ?? ""]] : []),
  ];
  return (
    <dl className="grid max-w-4xl gap-x-6 gap-y-1 sm:grid-cols-[14rem_1fr]">
      {rows.map(([name, value]) => (
        <div key={name} className="contents">
          <dt className="text-ink-2">{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      <div className="contents">
        <dt className="text-ink-2">Source kept</dt>
        <dd>
          {file === null ? (
            "none; it was typed in"
          ) : (
            <>
              <a href={`/api/notices/${notice.id}`} download>
                {file.name}
              </a>
              <span className="block break-all text-ink-2 text-sm">{`SHA-256 ${file.hash}`}</span>
            </>
          )}
        </dd>
      </div>
    </dl>
  );
}
