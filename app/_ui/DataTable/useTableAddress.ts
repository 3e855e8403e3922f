import { usePathname, useSearchParams } from "next/navigation";
import { useState } from "react";
import { readAddress, type TableState, writeAddress } from "@/app/_ui/DataTable/tableAddress";

/**
 * The table's state and a way to change it. The state lives in the address.
 *
 * The history is replaced directly, which Next follows without asking the server for the page again. The text
 * being typed is held here too, so that a slow transition never takes letters back.
 */
export function useTableAddress(id: string): [TableState, (change: Partial<TableState>) => void] {
  const params = useSearchParams();
  const pathname = usePathname();
  const read = readAddress(id, params);
  const [search, setSearch] = useState(read.search);
  const state = { ...read, search };

  const change = (part: Partial<TableState>) => {
    if (part.search !== undefined) setSearch(part.search);
    const query = writeAddress(id, window.location.search, {
      ...readAddress(id, new URLSearchParams(window.location.search)),
      ...part,
    });
    window.history.replaceState(null, "", query === "" ? pathname : `${pathname}?${query}`);
  };
  return [state, change];
}
