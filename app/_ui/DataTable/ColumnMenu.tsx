import { lazy, Suspense, useRef, useState } from "react";
import type { Column } from "@/app/_ui/DataTable/column";

const load = () => import("@/app/_ui/DataTable/ColumnChoice");
/** Fetched when somebody comes near the button: no table needs it to be read. */
const ColumnChoice = lazy(() => load().then((part) => ({ default: part.ColumnChoice })));

interface ColumnMenuProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly shown: Readonly<Record<string, boolean>>;
  readonly onChange: (keys: readonly string[] | null) => void;
}

/** Chooses the columns shown; the first column always stays. A choice also holds on a narrow screen. */
export function ColumnMenu<Row>({ columns, shown, onChange }: ColumnMenuProps<Row>) {
  const [open, setOpen] = useState(false);
  const trigger = useRef<HTMLButtonElement>(null);
  return (
    <>
      <button
        ref={trigger}
        type="button"
        className="button"
        aria-haspopup="menu"
        aria-expanded={open}
        onPointerEnter={load}
        onFocus={load}
        onClick={() => setOpen(!open)}
      >
        Columns
      </button>
      {open ? (
        <Suspense fallback={null}>
          <ColumnChoice
            {...{ trigger, shown, onChange }}
            columns={columns.slice(1)}
            onClose={() => setOpen(false)}
          />
        </Suspense>
      ) : null}
    </>
  );
}
