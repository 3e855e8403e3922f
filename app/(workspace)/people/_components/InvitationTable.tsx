"use client";

import { useMemo } from "react";
import { Button } from "@/app/_ui/Button";
import type { Column } from "@/app/_ui/DataTable/column";
import { DataTable } from "@/app/_ui/DataTable/DataTable";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { InvitePerson } from "@/app/(workspace)/people/_components/InvitePerson";
import { withdrawInvitation } from "@/app/(workspace)/people/actions";
import type { InvitationRow } from "@/lib/data/invitations";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { describeEntry, gatherRoles } from "@/lib/view/roleEntry";
import { day } from "@/lib/view/time";

interface InvitationTableProps {
  readonly invitations: readonly InvitationRow[];
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
}

/** Who was invited, and what came of it. */
export function InvitationTable({ invitations, sites, projects }: InvitationTableProps) {
  const { done, tell, close } = useDone();
  const columns = useMemo(() => {
    const codes = {
      sites: new Map(sites.map((site) => [site.id, site.code])),
      projects: new Map(projects.map((project) => [project.id, project.code])),
    };
    const withdraw = async ({ id, name }: InvitationRow) => {
      const answer = await withdrawInvitation({ invitationId: id });
      tell({ message: answer.ok ? `The link of ${name} is withdrawn.` : answer.error.reason });
    };
    return columnsOf(codes, withdraw);
  }, [sites, projects, tell]);
  return (
    <>
      <DataTable
        id="invitations"
        caption="Invitations and links for a new password"
        rows={invitations}
        columns={columns}
        rowKey={({ id }) => id}
        initialSort={{ key: "until", descending: true }}
        noun="links"
        extra={<InvitePerson {...{ sites, projects }} />}
      />
      <UndoBar message={done?.message ?? null} onClose={close} />
    </>
  );
}

function columnsOf(
  codes: Parameters<typeof describeEntry>[1],
  withdraw: (row: InvitationRow) => void,
): readonly Column<InvitationRow>[] {
  const rolesOf = (row: InvitationRow) =>
    row.renews
      ? "New password"
      : gatherRoles(row.grants)
          .map((entry) => describeEntry(entry, codes))
          .join("; ");
  return [
    { key: "name", header: "Name", value: ({ name }) => name, filter: "text", priority: 1 },
    { key: "email", header: "E-mail", value: ({ email }) => email, filter: "text" },
    { key: "roles", header: "For", value: rolesOf, priority: 1 },
    { key: "by", header: "Made by", value: ({ invitedBy }) => invitedBy },
    {
      ...{ key: "until", header: "Opens until", value: ({ expiresAt }: InvitationRow) => expiresAt },
      cell: ({ expiresAt }) => day(expiresAt.slice(0, 10)),
    },
    { key: "state", header: "State", value: ({ state }) => state, filter: "choice" },
    {
      ...{ key: "change", header: "Change", value: () => null, priority: 1 },
      cell: (row) =>
        row.state === "open" ? (
          <Button kind="quiet" onClick={() => withdraw(row)}>
            Withdraw
          </Button>
        ) : null,
    },
  ];
}
