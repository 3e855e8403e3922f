"use client";

import { useMemo } from "react";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { AddPerson } from "@/app/(workspace)/people/_components/AddPerson";
import { personColumns } from "@/app/(workspace)/people/_components/personColumns";
import type { Person } from "@/lib/data/people";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";

interface PeopleTableProps {
  readonly people: readonly Person[];
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
  /** Whose own account cannot be closed from here. */
  readonly ownId: string;
}

/** Everybody with an account, and what can be changed about it. */
export function PeopleTable({ people, sites, projects, ownId }: PeopleTableProps) {
  const { done, tell, undo, close } = useDone();
  const columns = useMemo(
    () => personColumns({ sites, projects, ownId, tell }),
    [sites, projects, ownId, tell],
  );
  const message = done?.message ?? null;
  return (
    <>
      <DataTable
        id="people"
        caption="People with an account"
        rows={people}
        columns={columns}
        rowKey={(person) => person.userId}
        initialSort={{ key: "name", descending: false }}
        noun="people"
        extra={
          <AddPerson
            {...{ sites, projects }}
            onAdded={(name) =>
              tell({ message: `${name} can sign in now. Tell the first password in person.` })
            }
          />
        }
      />
      {done?.undo ? (
        <UndoBar message={message} onUndo={undo} onClose={close} />
      ) : (
        <UndoBar message={message} onClose={close} />
      )}
    </>
  );
}
