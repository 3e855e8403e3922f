import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { Decision } from "@/lib/view/reportDecisions";

/** What waits for somebody's word, most pressing first, each with the page it is settled on. */
export function Decisions({ decisions }: { readonly decisions: readonly Decision[] }) {
  if (decisions.length === 0) return <p>Nothing waits for a decision.</p>;
  return (
    <ol className="measure list-decimal pl-6">
      {decisions.map(({ text, href }) => (
        <li key={text} className="py-1">
          <AsOfLink href={href}>{text}</AsOfLink>
        </li>
      ))}
    </ol>
  );
}
