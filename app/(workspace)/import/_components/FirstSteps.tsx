import { REGISTERS } from "@/lib/intake/registers";
import { LOADING_ORDER } from "@/lib/view/importPattern";

/** What the first person in an empty installation reads. */
export function FirstSteps() {
  return (
    <div className="mb-8 border-accent border-l-4 py-1 pl-4">
      <h2 className="font-semibold text-xl">Load your registers in this order</h2>
      <p className="measure mt-1 text-ink-2">
        Nothing is known yet. Hand in your lists as they are; Ebbline finds the columns and asks where a file
        can be read in two ways. After the second one the ranking shows your lines, and each further list
        makes it surer.
      </p>
      <ol className="mt-3 list-decimal space-y-1 pl-6">
        {LOADING_ORDER.map(({ key, why }) => (
          <li key={key}>
            <strong className="font-semibold">{REGISTERS[key].label}.</strong> {why}
          </li>
        ))}
      </ol>
    </div>
  );
}
