import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import type { CloseItem } from "@/lib/projects/closeOut";
import { closeTopicWords, mendAt } from "@/lib/view/closeOut";
import { plainNumber } from "@/lib/view/number";

interface TopicTableProps {
  readonly code: string;
  readonly items: readonly CloseItem[];
}

const HEADS = ["What must be true", "State", "Looked at", "What is missing, and where it is mended"] as const;

/** Everything a closing rests on, in the order of the work, each with what is missing. */
export function TopicTable({ code, items }: TopicTableProps) {
  return (
    <RowTable caption="What must be true before the project is closed" heads={HEADS}>
      {items.map(({ topic, of, missing }) => {
        const { title, of: noun } = closeTopicWords(topic);
        return (
          <tr key={topic} id={`topic-${topic}`}>
            <th scope="row" className="font-semibold">
              {title}
            </th>
            <td className="whitespace-nowrap">
              {missing.length === 0 ? "● in order" : `▲ ${plainNumber(missing.length)} missing`}
            </td>
            <td className="text-ink-2">
              {plainNumber(of)} {noun}
            </td>
            <td>
              <Lacks {...{ code, topic, missing }} />
            </td>
          </tr>
        );
      })}
    </RowTable>
  );
}

const SHOWN = 3;

type LacksProps = { readonly code: string } & Pick<CloseItem, "topic" | "missing">;

/** The first lacks of a topic, the others folded. */
function Lacks({ code, topic, missing }: LacksProps) {
  const list = (from: number, to?: number) => (
    <ul className="grid gap-0.5">
      {missing.slice(from, to).map(({ id, text }) => (
        <li key={text}>
          <AsOfLink href={mendAt({ code, topic, id })}>{text}</AsOfLink>
        </li>
      ))}
    </ul>
  );
  if (missing.length === 0) return null;
  return (
    <>
      {list(0, SHOWN)}
      {missing.length > SHOWN ? (
        <details className="disclosure prints">
          <summary className="text-sm">and {plainNumber(missing.length - SHOWN)} more</summary>
          {list(SHOWN)}
        </details>
      ) : null}
    </>
  );
}
