import { KeyFigure } from "@/app/_ui/KeyFigure";
import { KeyFigures } from "@/app/_ui/KeyFigures";
import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { FindingTable } from "@/app/(workspace)/sightings/_components/FindingTable";
import { GhostTable } from "@/app/(workspace)/sightings/_components/GhostTable";
import { SettledTable } from "@/app/(workspace)/sightings/_components/SettledTable";
import type { Sightings } from "@/lib/data/sightings";
import type { SiteName } from "@/lib/data/siteNames";
import { percent } from "@/lib/view/chance";
import { count, plainNumber } from "@/lib/view/number";
import { SIGHT_KINDS, type SightRow } from "@/lib/view/sighting";
import { day } from "@/lib/view/time";

const of = (rows: readonly SightRow[], kind: SightRow["kind"]) =>
  plainNumber(rows.filter((row) => row.kind === kind).length);

/** A site's lists held against its register. */
export function Compared({ found, site }: { readonly found: Sightings; readonly site: SiteName }) {
  const { rows, ghosts, lists, settled, apart, compared, notLookedAt, maySettle } = found;
  return (
    <>
      <KeyFigures>
        <KeyFigure
          label="Do not agree"
          value={compared === 0 ? "not known" : percent(apart / compared)}
          unit={`${plainNumber(apart)} of ${plainNumber(compared)}`}
        />
        <KeyFigure label={SIGHT_KINDS.unseen.name} value={of(rows, "unseen")} unit="places on record" />
        <KeyFigure
          label={SIGHT_KINDS.unregistered.name}
          value={of(rows, "unregistered")}
          unit="devices seen"
        />
        <KeyFigure label={SIGHT_KINDS.adds.name} value={of(rows, "adds")} unit="records" />
      </KeyFigures>
      <Section
        title="Lists and register"
        id="findings"
        lead={
          notLookedAt === 0
            ? "The latest list of each network and source, where they part first."
            : `The latest list of each network and source, where they part first. Of ${count(notLookedAt, "place")} with a node address no list says anything: nobody looked there.`
        }
      >
        <FindingTable rows={rows} siteId={site.id} maySettle={maySettle} />
      </Section>
      <Section
        title="Machines no list sees"
        id="ghosts"
        lead="Of all their places a list looked for, it saw none. Proposed for retirement; go and look before you retire one."
      >
        <GhostTable ghosts={ghosts} maySettle={maySettle} />
      </Section>
      {settled.length === 0 ? null : (
        <Section title="Decided, and no longer apart" id="settled">
          <SettledTable verdicts={settled} maySettle={maySettle} />
        </Section>
      )}
      <Section title="Lists loaded" id="lists">
        <RowTable caption="Lists loaded" heads={["Source", "Seen on", { text: "Devices", end: true }]}>
          {lists.map(({ source, seenOn, devices }) => (
            <tr key={`${source} ${seenOn}`}>
              <th scope="row">{source}</th>
              <td>{day(seenOn)}</td>
              <td data-align="end">{plainNumber(devices)}</td>
            </tr>
          ))}
        </RowTable>
      </Section>
    </>
  );
}
