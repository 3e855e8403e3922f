import Form from "next/form";
import { Button } from "@/app/_ui/Button";
import { NumberField } from "@/app/_ui/field/NumberField";
import type { TransferTermsRead } from "@/lib/view/poolMoves";

interface TermsFormProps extends TransferTermsRead {
  readonly asOf: string;
  readonly partId: string;
  /** Whether the least saving may be typed: who sees no amounts would learn them by trying. */
  readonly asksLeast: boolean;
}

/** What a move must keep to; sent into the address. */
export function TermsForm({ terms, unreadable, asOf, partId, asksLeast }: TermsFormProps) {
  const problem = (name: string) =>
    unreadable.includes(name) ? "Not a number in these bounds; the default is used." : undefined;
  return (
    <Form action={`/pool/${partId}`} scroll={false} className="no-print mb-4 grid gap-4 sm:grid-cols-3">
      <NumberField
        key={`target-${terms.target}`}
        name="target"
        label="Giving site's own no-spare chance at most"
        unit="%, mean of a year"
        hint="0.1 to 50"
        min={0.1}
        max={50}
        required
        defaultValue={Number((terms.target * 100).toPrecision(6))}
        error={problem("target")}
      />
      {asksLeast ? (
        <NumberField
          key={`least-${terms.least}`}
          name="least"
          label="A move must save at least"
          unit="EUR a year"
          hint="Freight, papers and a day's work"
          min={0}
          max={1_000_000}
          required
          defaultValue={terms.least}
          error={problem("least")}
        />
      ) : null}
      <input type="hidden" name="asOf" value={asOf} />
      <div className="grid content-end">
        <div>
          <Button type="submit">Look again</Button>
        </div>
      </div>
      <p className="measure text-ink-2 text-sm sm:col-span-3">
        Assumed: both bounds are the product&apos;s own choice until you type yours; no source.
      </p>
    </Form>
  );
}
