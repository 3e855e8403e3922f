"use client";

import { useRouter } from "next/navigation";
import { useMemo, useState } from "react";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { assumptionColumns } from "@/app/(workspace)/assumptions/_components/assumptionColumns";
import type { AssumptionRow } from "@/lib/view/assumptionTable";

interface AssumptionTableProps {
  readonly rows: readonly AssumptionRow[];
  readonly ownVersion: number;
  readonly mayChange: boolean;
}

/** Every value in every set, and the way to state another. */
export function AssumptionTable({ rows, ownVersion, mayChange }: AssumptionTableProps) {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const columns = useMemo(() => {
    const onStated = (version: number) => {
      setMessage(`Own, version ${version}, is written down. It moves no figure until it is taken into use.`);
      router.refresh();
    };
    return assumptionColumns({ rows, ownVersion, mayChange, onStated });
  }, [rows, ownVersion, mayChange, router]);
  return (
    <>
      <DataTable
        id="assumptions"
        caption="Assumptions in every set"
        rows={rows}
        columns={columns}
        rowKey={({ path }) => path}
        noun="assumptions"
      />
      <UndoBar message={message} onClose={() => setMessage(null)} />
    </>
  );
}
