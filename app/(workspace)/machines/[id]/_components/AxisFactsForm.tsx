import type { ReactNode } from "react";
import { EntryForm } from "@/app/_ui/EntryForm";
import { DateField } from "@/app/_ui/field/DateField";
import { NumberField } from "@/app/_ui/field/NumberField";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { WhyField } from "@/app/_ui/field/WhyField";
import { saveAxisFacts } from "@/app/(workspace)/machines/[id]/actions";
import { type AxisFacts, type FactGroup, HOMING_METHODS } from "@/lib/schema/axisFacts";
import { FACT_LABELS, homingName, readFacts } from "@/lib/view/axisFacts";
import { evidenceChoices } from "@/lib/view/evidence";

interface AxisFactsFormProps {
  readonly axisId: string;
  readonly seen: AxisFacts;
  readonly onSaved: (facts: AxisFacts) => void;
}

const HOMING = HOMING_METHODS.map((value) => ({ value, label: homingName(value) }));
const CHAIN = [
  { value: "yes", label: "yes" },
  { value: "no", label: "no" },
] as const;

/** What is known of an axis's cables, travel and homing, as a form. */
export function AxisFactsForm({ axisId, seen, onSaved }: AxisFactsFormProps) {
  return (
    <EntryForm
      submit="Save the axis"
      save={(text) => saveAxisFacts({ axisId, seen, wanted: readFacts(text), why: text("why") })}
      onSaved={({ facts }) => onSaved(facts)}
    >
      {(errorOf) => {
        const field = (name: keyof AxisFacts) => ({
          ...{ name, label: FACT_LABELS[name], error: errorOf(name), defaultValue: textOf(seen[name]) },
        });
        const unit = seen.travelUnit ?? "unit of travel";
        return (
          <>
            <p className="text-ink-2 text-sm">An empty field means not known; it is never taken as zero.</p>
            {(["powerCable", "feedbackCable"] as const).map((cable) => (
              <Group key={cable} title={FACT_LABELS[cable]}>
                <TextField
                  {...field(cable)}
                  label="Type, as printed on it"
                  maxLength={80}
                  autoComplete="off"
                />
                <NumberField {...field(`${cable}Length`)} label="Length" unit="m" min={0} />
                <SelectField
                  {...field(`${cable}InChain`)}
                  label="In a moving chain"
                  empty="not known"
                  choices={CHAIN}
                />
                <Known group={cable} field={field} />
              </Group>
            ))}
            <Group title="Travel and its ends">
              <TextField {...field("travelUnit")} hint="As mm or deg." maxLength={20} autoComplete="off" />
              <NumberField {...field("travel")} label="Whole travel" unit={unit} min={0} />
              <NumberField {...field("hardLow")} unit={unit} />
              <NumberField {...field("hardHigh")} unit={unit} />
              <NumberField {...field("softLow")} unit={unit} />
              <NumberField {...field("softHigh")} unit={unit} />
              <Known group="travel" field={field} />
            </Group>
            <Group title="Homing">
              <SelectField {...field("homing")} label="Method" empty="not known" choices={HOMING} />
              <NumberField {...field("homeOffset")} unit={unit} />
              <Known group="homing" field={field} />
            </Group>
            <WhyField error={errorOf("why")} />
          </>
        );
      }}
    </EntryForm>
  );
}

const textOf = (value: AxisFacts[keyof AxisFacts]) =>
  value === null ? "" : typeof value === "boolean" ? (value ? "yes" : "no") : String(value);

function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <fieldset className="border-rule border-t pt-3">
      <legend className="pr-3 font-semibold">{title}</legend>
      <div className="grid gap-4 sm:grid-cols-2">{children}</div>
    </fieldset>
  );
}

interface KnownProps {
  readonly group: FactGroup;
  readonly field: (name: keyof AxisFacts) => {
    readonly name: string;
    readonly label: string;
    readonly error: string | undefined;
    readonly defaultValue: string;
  };
}

/** How well a group is known, and since when. */
function Known({ group, field }: KnownProps) {
  return (
    <>
      <SelectField
        {...field(`${group}Evidence`)}
        label="How well it is known"
        empty="nothing of it is"
        choices={evidenceChoices}
      />
      <DateField {...field(`${group}ReadOn`)} label="Read or measured on" />
    </>
  );
}
