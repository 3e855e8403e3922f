import type { Column } from "@/app/_ui/DataTable/column";
import type { Done } from "@/app/(workspace)/_components/useDone";
import { AccountSwitch } from "@/app/(workspace)/people/_components/AccountSwitch";
import { ChangeRoles } from "@/app/(workspace)/people/_components/ChangeRoles";
import { NewPassword } from "@/app/(workspace)/people/_components/NewPassword";
import { saveRoles, switchAccount } from "@/app/(workspace)/people/actions";
import type { Person } from "@/lib/data/people";
import type { ProjectName } from "@/lib/data/projectNames";
import type { SiteName } from "@/lib/data/siteNames";
import { describeEntry, gatherRoles } from "@/lib/view/roleEntry";

interface Around {
  readonly sites: readonly SiteName[];
  readonly projects: readonly ProjectName[];
  readonly ownId: string;
  readonly tell: (done: Done) => void;
}

/** The columns of the people table. */
export function personColumns(around: Around): readonly Column<Person>[] {
  const codes = {
    sites: new Map(around.sites.map((site) => [site.id, site.code])),
    projects: new Map(around.projects.map((project) => [project.id, project.code])),
  };
  const roleLines = (person: Person) =>
    gatherRoles(person.grants).map((entry) => describeEntry(entry, codes));
  return [
    {
      key: "name",
      header: "Name",
      value: (person) => person.name,
      cell: (person) => <span translate="no">{person.name}</span>,
      filter: "text",
    },
    { key: "email", header: "E-mail", value: (person) => person.email, filter: "text" },
    {
      key: "roles",
      header: "Roles",
      value: (person) => roleLines(person).join("; ") || "No role",
      cell: (person) => <RoleLines lines={roleLines(person)} />,
      filter: "text",
      priority: 1,
    },
    {
      key: "account",
      header: "Account",
      value: (person) => (person.closed ? "closed" : "open"),
      filter: "choice",
    },
    {
      key: "change",
      header: "Change",
      value: () => null,
      cell: (person) => <Changes person={person} {...around} />,
      priority: 1,
    },
  ];
}

function RoleLines({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return <span className="text-ink-2">No role: sees nothing</span>;
  return lines.map((line) => (
    <span key={line} className="block">
      {line}
    </span>
  ));
}

function Changes({ person, sites, projects, ownId, tell }: Around & { readonly person: Person }) {
  const { userId, name, grants, closed } = person;
  const isOwn = userId === ownId;
  const switched = closed
    ? `Account of ${name} opened.`
    : `Account of ${name} closed; nobody is signed in with it any more.`;
  return (
    <span className="flex flex-wrap gap-1">
      <ChangeRoles
        {...{ person, sites, projects, isOwn }}
        onSaved={() =>
          tell({
            message: `Roles of ${name} changed.`,
            undo: () => saveRoles({ userId, grants: [...grants] }),
          })
        }
      />
      {isOwn ? (
        <span className="self-center text-ink-2 text-sm">Your own account</span>
      ) : (
        <>
          {closed ? null : <NewPassword person={person} />}
          <AccountSwitch
            person={person}
            onSwitched={() => tell({ message: switched, undo: () => switchAccount({ userId, closed }) })}
            onRefused={(reason) => tell({ message: reason })}
          />
        </>
      )}
    </span>
  );
}
