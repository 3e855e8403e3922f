import { EmptyState } from "@/app/_ui/EmptyState";
import { LinkButton } from "@/app/_ui/LinkButton";

interface NoLinesProps {
  /** Lines of the whole group. */
  readonly groupLines: number;
  readonly mayImport: boolean;
}

/** Says why there is no ranking and what brings one. */
export function NoLines({ groupLines, mayImport }: NoLinesProps) {
  if (groupLines > 0)
    return (
      <EmptyState title="No line you may see">
        Lines are kept by site, and none of your sites has one. Ask an administrator of Ebbline for a role at
        the site whose lines you work on.
      </EmptyState>
    );
  return (
    <EmptyState
      title="No lines yet"
      actions={
        mayImport ? (
          <>
            <LinkButton href="/start" kind="primary">
              First steps
            </LinkButton>
            <LinkButton href="/import">Import a register</LinkButton>
          </>
        ) : null
      }
    >
      Load the supply dates first, then each site's assets, axis survey, stock and events. The ranking appears
      as soon as a line has items in it.
      {mayImport ? "" : " Your role does not import; ask a planner or an engineer."}
    </EmptyState>
  );
}
