import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { daysLeftWords, type NoticeRow } from "@/lib/view/noticeList";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

/** The days of a notice and the units it touches. */
export function NoticeFigures({ row, asOf }: { readonly row: NoticeRow; readonly asOf: IsoDate }) {
  const away = (date: IsoDate | null) => (date === null ? "" : distance(date, asOf));
  return (
    <KeyFigures>
      <KeyFigure
        label="Start the order by"
        value={day(row.orderByOn)}
        span={row.state === "open" ? daysLeftWords(row.daysLeft) : ""}
      />
      <KeyFigure label="Last order" value={day(row.lastOrderOn)} span={away(row.lastOrderOn)} />
      <KeyFigure label="Last shipment" value={day(row.lastShipOn)} span={away(row.lastShipOn)} />
      <KeyFigure label="Repair until" value={day(row.repairUntilOn)} span={away(row.repairUntilOn)} />
      <KeyFigure label="In service" value={plainNumber(row.units)} unit="units" span="at your sites" />
    </KeyFigures>
  );
}
