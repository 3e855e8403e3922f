import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { SiteName } from "@/lib/data/siteNames";
import { type IssueChoice, issueAddress } from "@/lib/view/reportArchive";

interface IssueFilterProps {
  readonly chosen: IssueChoice;
  readonly sites: readonly SiteName[];
  /** Whether the group's reports are the reader's too. */
  readonly hasGroup: boolean;
}

const KINDS = [
  { kind: null, name: "Months and weeks" },
  { kind: "monthly", name: "Months" },
  { kind: "weekly", name: "Weeks" },
] as const;

/** Which of the reports are listed: by kind, and by whose they are. */
export function IssueFilter({ chosen, sites, hasGroup }: IssueFilterProps) {
  const owners = [
    { of: null, name: "All" },
    ...(hasGroup ? [{ of: "group", name: "Group" }] : []),
    ...sites.map(({ code }) => ({ of: code, name: code })),
  ];
  return (
    <div className="no-print mb-4 flex flex-wrap gap-x-6 gap-y-2">
      <nav aria-label="Kinds of report" className="flex flex-wrap gap-2">
        {KINDS.map(({ kind, name }) => (
          <AsOfLink
            key={name}
            href={issueAddress({ ...chosen, kind })}
            className="button"
            aria-current={kind === chosen.kind ? "page" : undefined}
          >
            {name}
          </AsOfLink>
        ))}
      </nav>
      <nav aria-label="Whose reports" className="flex flex-wrap gap-2">
        {owners.map(({ of, name }) => (
          <AsOfLink
            key={name}
            href={issueAddress({ ...chosen, of })}
            className="button"
            aria-current={of === chosen.of ? "page" : undefined}
          >
            {name}
          </AsOfLink>
        ))}
      </nav>
    </div>
  );
}
