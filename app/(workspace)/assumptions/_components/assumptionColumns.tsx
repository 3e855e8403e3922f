import type { Column } from "@/app/_ui/DataTable/column";
import { ChangeValues } from "@/app/(workspace)/assumptions/_components/ChangeValues";
import { type AssumptionRow, assumptionNumber } from "@/lib/view/assumptionTable";
import { day } from "@/lib/view/time";

interface Around {
  readonly rows: readonly AssumptionRow[];
  readonly ownVersion: number;
  readonly mayChange: boolean;
  readonly onStated: (version: number) => void;
}

type SetKey = "careful" | "likely" | "bold" | "own" | "inUse";

function setColumn(key: SetKey, header: string): Column<AssumptionRow> {
  return {
    ...{ key: key === "inUse" ? "in-use" : key, header, align: "end" },
    value: (row) => row[key],
    cell: (row) => {
      const value = row[key];
      const text = value === null ? "none stated" : assumptionNumber(value);
      return key === "inUse" ? <strong>{text}</strong> : text;
    },
  };
}

/** The columns of the assumptions; the last one only for who may state values. */
export function assumptionColumns(around: Around): readonly Column<AssumptionRow>[] {
  const columns: Column<AssumptionRow>[] = [
    { key: "name", header: "Assumption", value: ({ name }) => name, filter: "text", width: "16rem" },
    { key: "of", header: "Of", value: ({ of }) => of, filter: "choice", priority: 1 },
    { key: "unit", header: "Unit", value: ({ unit }) => unit, filter: "text" },
    setColumn("careful", "Careful"),
    setColumn("likely", "Likely"),
    setColumn("bold", "Bold"),
    { ...setColumn("own", "Own, newest"), hidden: true },
    { ...setColumn("inUse", "In use"), priority: 1 },
    { key: "basis", header: "Basis", value: ({ basis }) => basis, filter: "text", priority: 3 },
    { key: "owner", header: "Owner", value: ({ owner }) => owner, filter: "text", priority: 3 },
    {
      ...{ key: "changed-on", header: "Changed on", priority: 3 },
      value: ({ changedOn }) => changedOn,
      cell: ({ changedOn }) => day(changedOn),
    },
  ];
  return around.mayChange ? [...columns, changeColumn(around)] : columns;
}

function changeColumn({ rows, ownVersion, onStated }: Around): Column<AssumptionRow> {
  return {
    ...{ key: "change", header: "Change", priority: 1 },
    value: () => null,
    cell: (row) =>
      row.fixed === null ? (
        <ChangeValues
          rows={together(rows, row)}
          {...{ ownVersion, onStated }}
          title={`${row.name} (${row.of})`}
        />
      ) : (
        <span className="text-ink-2 text-sm">{row.fixed}</span>
      ),
  };
}

/** The values asked for in one form: weights only fit together, all others stand alone. */
function together(rows: readonly AssumptionRow[], row: AssumptionRow): AssumptionRow[] {
  return row.group === "weights" ? rows.filter(({ group }) => group === row.group) : [row];
}
