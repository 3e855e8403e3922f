import { AsOfLink } from "@/app/_ui/AsOfLink";
import { EvidenceMark } from "@/app/_ui/EvidenceMark";
import { evidenceMark } from "@/lib/view/evidence";
import type { PlacedItem } from "@/lib/view/lineDossier";

interface PlacedWordsProps {
  readonly items: readonly PlacedItem[];
  /** Machine the places belong to, so that an address can point at one. */
  readonly machine: string;
  /** What belongs here, in words. */
  readonly what: string;
}

/** What sits in a place: part, serial number, hardware revision; unknown is said. */
export function PlacedWords({ items, machine, what }: PlacedWordsProps) {
  if (items.length === 0) return <span className="text-ink-3">no {what} recorded</span>;
  return items.map((item) => (
    <span
      key={item.designation}
      id={`place-${machine}-${item.designation}`}
      className="block target:bg-accent-soft"
    >
      {item.part === null ? (
        "not identified"
      ) : (
        <AsOfLink href={`/parts/${item.part.id}`}>{item.part.number}</AsOfLink>
      )}{" "}
      <EvidenceMark {...evidenceMark(item.evidence)} />
      <span className="block text-ink-2 text-xs">
        {item.designation}, {item.serial === null ? "serial not known" : `serial ${item.serial}`},{" "}
        {item.revision === null ? "revision not known" : `revision ${item.revision}`}
      </span>
    </span>
  ));
}
