import { ListBox, ListBoxItem } from "react-aria-components";
import type { SearchAnswer } from "@/app/_ui/search/useSearch";

interface SearchResultsProps {
  readonly answer: SearchAnswer;
  readonly query: string;
  readonly onChoose: (href: string) => void;
}

const SENTENCES = {
  idle: "Type two letters or more: a designation, serial number, part number, bin, line or plan.",
  searching: "Searching…",
  failed: "The search did not answer. Try again in a moment.",
} as const;

function sentence({ answer, query }: Omit<SearchResultsProps, "onChoose">): string {
  if (answer.state !== "found") return SENTENCES[answer.state];
  return answer.hits.length === 0
    ? `Nothing at your sites matches “${query}”. Try part of the number, without dashes.`
    : `${answer.hits.length} found`;
}

/** The hits as a list to walk with the arrow keys. */
export function SearchResults({ answer, query, onChoose }: SearchResultsProps) {
  const hits = answer.state === "found" ? answer.hits : [];
  return (
    <>
      <p role="status" className="px-4 py-2 text-ink-2 text-sm">
        {sentence({ answer, query })}
      </p>
      <ListBox
        aria-label="Search results"
        className="max-h-[55dvh] overflow-y-auto outline-none empty:hidden"
        items={hits.map((hit, place) => ({ ...hit, id: place }))}
        onAction={(key) => {
          const hit = hits[Number(key)];
          if (hit) onChoose(hit.href);
        }}
      >
        {(hit) => (
          <ListBoxItem className="option border-rule border-t" textValue={`${hit.title} ${hit.detail}`}>
            <span className="flex items-baseline gap-3">
              <span className="label w-20 shrink-0">{hit.kind}</span>
              <span className="min-w-0">
                <span className="font-semibold">{hit.title}</span>{" "}
                <span className="text-ink-2">{hit.detail}</span>
              </span>
            </span>
          </ListBoxItem>
        )}
      </ListBox>
    </>
  );
}
