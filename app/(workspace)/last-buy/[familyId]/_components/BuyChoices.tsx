import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { PlanYears } from "@/app/(workspace)/last-buy/[familyId]/_components/PlanYears";
import type { BuyChoice } from "@/lib/schema/buyDecision";
import type { BuyBasis } from "@/lib/view/lastBuyBasis";

export interface BuyChoicesProps {
  readonly basis: BuyBasis;
  readonly choice: BuyChoice;
  readonly change: (choice: BuyChoice) => void;
}

const SHARING = [
  { value: "family", label: "Pooled: all sizes are one" },
  { value: "part", label: "By size, shared by all sites" },
  { value: "site", label: "By size and site, nobody shares" },
] as const;
const SLIPS = [
  { value: "0", label: "as planned" },
  { value: "1", label: "a year late" },
  { value: "2", label: "two years late" },
] as const;

/** A level typed in percent; null where it cannot be used. */
function levelOf(text: string): number | null {
  const share = Number(text) / 100;
  return text !== "" && share >= 0.5 && share <= 0.9999 ? share : null;
}

/** The switches of the sheet; each change shows at once. */
export function BuyChoices({ basis, choice, change }: BuyChoicesProps) {
  return (
    <section
      aria-label="What the sheet is worked out for"
      className="mb-6 grid items-end gap-4 border-rule-2 border-y bg-shade px-4 py-3 sm:grid-cols-2 lg:grid-cols-4"
    >
      <SelectField
        label="Who shares the stock"
        name="sharing"
        required
        choices={SHARING}
        value={choice.sharing}
        onChange={({ target }) =>
          change({ ...choice, sharing: SHARING.find(({ value }) => value === target.value)?.value ?? "part" })
        }
      />
      <SelectField
        label="The retrofits come"
        name="slip"
        required
        choices={SLIPS}
        value={String(choice.slipYears)}
        onChange={({ target }) =>
          change({ ...choice, slipYears: target.value === "2" ? 2 : target.value === "1" ? 1 : 0 })
        }
      />
      <NumberField
        label="Level of service"
        name="level"
        unit="%"
        hint="Empty follows the costs; from 50 to 99.99."
        min={50}
        max={99.99}
        defaultValue={choice.level === null ? "" : choice.level * 100}
        onChange={({ target }) => change({ ...choice, level: levelOf(target.value) })}
      />
      <CheckboxField
        label="Repair goes on as offered"
        name="repaired"
        checked={choice.repaired}
        onChange={({ target }) => change({ ...choice, repaired: target.checked })}
      />
      <PlanYears {...{ basis, choice, change }} />
    </section>
  );
}
