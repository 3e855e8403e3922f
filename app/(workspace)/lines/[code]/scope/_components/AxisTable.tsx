import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { RowTable } from "@/app/_ui/RowTable";
import type { AxisScope } from "@/lib/retrofit/scope/axisScope";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import { evidenceMark } from "@/lib/view/evidence";
import { count } from "@/lib/view/number";

const FITS = {
  fits: "fits",
  adapter: "stays with an adapter",
  sizing: "a competent engineer must size a replacement",
  unknown: "not known",
} as const;

const HEADS = ["Axis", "Drive now", "Follows", "Motor", "Network", "Why"];

const successorNote = ({ successor }: AxisScope): string | null => {
  if (successor === null) return null;
  return successor.basis === "recorded" ? successor.condition : "Not recorded: the same size mark only.";
};

/** What is said of successors and motors, each once; a row names it by its number. */
function notesOf(axes: readonly AxisScope[]): readonly string[] {
  const notes = axes.flatMap((one) => [successorNote(one), one.motor.words]);
  return [...new Set(notes.filter((note) => note !== null))];
}

/** Each converted axis with what follows its drive and whether its motor can stay. */
export function AxisTable({ scope }: { readonly scope: Scope }) {
  const { axes, staying, elsewhere } = scope;
  const lines = [...new Set(elsewhere.map(({ lineCode }) => lineCode))];
  const notes = notesOf(axes);
  return (
    <>
      <RowTable caption="Axes to convert" heads={HEADS}>
        {axes.map((one) => (
          <AxisRow key={one.axis.id} one={one} notes={notes} />
        ))}
      </RowTable>
      <ol aria-label="Notes on the axes" className="measure mt-2 list-decimal pl-6 text-ink-2 text-sm">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ol>
      {elsewhere.length === 0 ? null : (
        <p className="measure mt-3">
          {`${count(elsewhere.length, "axis", "axes")} of ${lines.join(", ")} hang on the same rings and have to come along; they are not in the figures.`}
        </p>
      )}
      {staying.length === 0 ? null : (
        <p className="measure mt-3">{`${count(staying.length, "axis stays", "axes stay")}: open supply or the family asked for.`}</p>
      )}
    </>
  );
}

interface AxisRowProps {
  readonly one: AxisScope;
  readonly notes: readonly string[];
}

function AxisRow({ one, notes }: AxisRowProps) {
  const { axis, successor, motor, why } = one;
  return (
    <tr>
      <th scope="row" className="whitespace-nowrap">
        {`${axis.machine} / ${axis.code}`} <EvidenceMark {...evidenceMark(axis.evidence)} />
      </th>
      <td>{axis.drive?.number ?? "not identified"}</td>
      <td>
        {successor === null ? (
          "none on record"
        ) : (
          <AsOfLink href={`/parts/${successor.part.id}`}>{successor.part.number}</AsOfLink>
        )}
        <NoteMark notes={notes} note={successorNote(one)} />
      </td>
      <td>
        {axis.motor?.number ?? "not recorded"}: {FITS[motor.fit]}
        <NoteMark notes={notes} note={motor.words} />
      </td>
      <td>{axis.network ?? "not recorded"}</td>
      <td>{why === "out of supply" ? "drive out of open supply" : "comes along: same ring"}</td>
    </tr>
  );
}

/** The number of a note below the table; the note itself is read out with it. */
function NoteMark({ notes, note }: { readonly notes: readonly string[]; readonly note: string | null }) {
  if (note === null) return null;
  return (
    <span className="text-ink-2 text-sm" title={note}>
      {" "}
      (note {notes.indexOf(note) + 1})
    </span>
  );
}
