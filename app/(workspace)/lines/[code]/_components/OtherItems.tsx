import { PlacedWords } from "@/app/(workspace)/lines/[code]/_components/PlacedWords";
import type { PlacedItem } from "@/lib/view/lineDossier";
import { itemClassName } from "@/lib/view/linePart";

interface OtherItemsProps {
  readonly items: readonly PlacedItem[];
  readonly machine: string;
}

/** Items of a machine that belong to no axis: controller, supplies, panels, cards. */
export function OtherItems({ items, machine }: OtherItemsProps) {
  if (items.length === 0) return null;
  const kinds = [...new Set(items.map((item) => item.itemClass))];
  return (
    <dl className="mt-3 grid grid-cols-[repeat(auto-fill,minmax(14rem,1fr))] gap-x-6 gap-y-3 text-[0.9375rem]">
      {kinds.map((kind) => (
        <div key={kind}>
          <dt className="label">{itemClassName(kind)}</dt>
          <dd>
            <PlacedWords
              items={items.filter((item) => item.itemClass === kind)}
              machine={machine}
              what={itemClassName(kind)}
            />
          </dd>
        </div>
      ))}
    </dl>
  );
}
