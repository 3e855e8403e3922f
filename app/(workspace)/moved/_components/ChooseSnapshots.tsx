import { Button } from "@/app/_ui/Button";
import { SelectField } from "@/app/_ui/field/SelectField";
import { NOW, type SnapshotMark, snapshotLabel } from "@/lib/view/moved";

interface ChooseSnapshotsProps {
  readonly snapshots: readonly SnapshotMark[];
  readonly from: string;
  readonly to: string;
  readonly asOf: string;
  readonly zone: string;
}

/** Which two are compared; the choice stands in the address. */
export function ChooseSnapshots({ snapshots, from, to, asOf, zone }: ChooseSnapshotsProps) {
  const choices = snapshots.map((mark) => ({ value: mark.id, label: snapshotLabel(mark, zone) }));
  const now = { value: NOW, label: snapshotLabel({ id: NOW, asOf, takenAt: null, takenBy: null }, zone) };
  return (
    <form action="/moved" className="no-print flex flex-wrap items-end gap-4">
      <input type="hidden" name="asOf" value={asOf} />
      <SelectField
        label="From"
        name="from"
        required
        choices={choices}
        defaultValue={from}
        key={`from ${from}`}
      />
      <SelectField
        label="To"
        name="to"
        required
        choices={[now, ...choices]}
        defaultValue={to}
        key={`to ${to}`}
      />
      <Button type="submit">Compare</Button>
    </form>
  );
}
