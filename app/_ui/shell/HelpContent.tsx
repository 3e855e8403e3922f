import { AsOfLink } from "@/app/_ui/AsOfLink";
import type { HelpText } from "@/lib/view/help/helpText";

interface HelpContentProps {
  /** Null while it is read, or where a page has none. */
  readonly help: HelpText | null;
  readonly onFollow: () => void;
}

/** The help of one page. */
export function HelpContent({ help, onFollow }: HelpContentProps) {
  if (help === null) return <p className="px-5 py-4 text-ink-2">This page has no help of its own.</p>;
  return (
    <div className="grid gap-4 px-5 py-4">
      <p className="text-[1.0625rem]">{help.about}</p>
      <section>
        <h3 className="label mb-1">How to read it</h3>
        <ul className="grid list-disc gap-1.5 pl-5">
          {help.read.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </section>
      <section>
        <h3 className="label mb-1">What to do next</h3>
        <ul className="grid">
          {help.next.map(({ text, href }) => (
            <li key={href}>
              <AsOfLink
                href={href}
                onClick={onFollow}
                className="inline-flex min-h-8 items-center max-sm:min-h-11"
              >
                {text}
              </AsOfLink>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h3 className="label mb-1">Where the figures come from</h3>
        <p>{help.from}</p>
      </section>
      <p className="text-ink-2 text-sm">
        Press ? anywhere for the help of the page, Ctrl K to search. An estimate never justifies running an
        unsafe machine.
      </p>
    </div>
  );
}
