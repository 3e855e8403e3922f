import { Button } from "@/app/_ui/Button";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import type { NoticeFieldsetProps } from "@/app/(workspace)/notices/new/_components/NoticeFieldset";
import { NOTICE_DATES, type NoticeDateKind, readingsOf } from "@/lib/intake/notice/noticeDate";
import { draftOrderBy, typedDays } from "@/lib/view/noticeDraft";
import { day } from "@/lib/view/time";

const LABELS: Readonly<Record<NoticeDateKind, string>> = {
  noticeOn: "Notice given on",
  lastOrderOn: "Last order",
  lastShipOn: "Last shipment",
  repairUntilOn: "Repair until",
};
const WEEKS = [
  ["quoteWeeks", "Quotation"],
  ["approvalWeeks", "Approval"],
  ["purchaseWeeks", "Writing the order"],
] as const;

/** The days of a notice, each with what was found for it, and the day the order must be started in the house. */
export function NoticeDays({ draft, change, found, problems }: NoticeFieldsetProps) {
  const orderBy = draftOrderBy(draft);
  return (
    <>
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        {NOTICE_DATES.map((kind) => (
          <div key={kind}>
            <DateField
              label={LABELS[kind]}
              name={kind}
              value={draft[kind]}
              error={problems[kind]}
              onChange={({ target }) => change({ ...draft, [kind]: target.value })}
            />
            <FoundDays {...{ kind, draft, change, found }} />
          </div>
        ))}
      </div>
      <OtherDays found={found} />
      <fieldset className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <legend className="mb-1 text-ink-2 text-sm">
          What the house needs before an order leaves it. Common practice, no source: 3, 5 and 1 weeks.
        </legend>
        {WEEKS.map(([name, label]) => (
          <NumberField
            key={name}
            {...{ name, label }}
            unit="weeks"
            required
            value={draft[name]}
            error={problems[name]}
            onChange={({ target }) => change({ ...draft, [name]: target.value })}
          />
        ))}
        <DateField
          label="Read on"
          name="checkedOn"
          required
          value={draft.checkedOn}
          error={problems.checkedOn}
          onChange={({ target }) => change({ ...draft, checkedOn: target.value })}
        />
      </fieldset>
      <p role="status" className="font-semibold">
        {orderBy === null
          ? "Without a last order there is no day to start the order by."
          : `Start the order by ${day(orderBy)}.`}
      </p>
    </>
  );
}

type FoundDaysProps = Pick<NoticeFieldsetProps, "draft" | "change" | "found"> & {
  readonly kind: NoticeDateKind;
};

/** The words a day was read from, and each way to read them as a button. */
function FoundDays({ kind, draft, change, found }: FoundDaysProps) {
  const own = (found?.dates ?? []).filter((one) => one.kind === kind);
  const known = typedDays(draft);
  return (
    <ul className="mt-1 grid gap-1 text-sm">
      {own.map((one, place) => {
        const readings = readingsOf(one, known);
        const chosen = readings.some(({ on }) => on === draft[kind]);
        return (
          // The same words may stand in a text twice.
          <li key={`${one.written} ${String(place)}`}>
            <span className="text-ink-2">
              “{one.written}”{readings.length === 0 ? ": enter the day it counts from" : ""}
              {readings.length > 1 && !chosen ? ": which day is meant?" : ""}
            </span>{" "}
            {readings.map(({ on, how }) => (
              <Button
                key={on}
                kind="quiet"
                aria-pressed={on === draft[kind]}
                onClick={() => change({ ...draft, [kind]: on })}
              >
                {day(on)}, {how}
              </Button>
            ))}
          </li>
        );
      })}
    </ul>
  );
}

/** Days found of which the text does not say what they are. */
function OtherDays({ found }: Pick<NoticeFieldsetProps, "found">) {
  const other = (found?.dates ?? []).filter(({ kind }) => kind === null);
  if (other.length === 0) return null;
  return (
    <p className="text-sm">
      Also in the text, without a word that says what for: {other.map(({ written }) => written).join(", ")}.
    </p>
  );
}
