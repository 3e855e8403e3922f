import type { Made } from "@/app/(workspace)/_components/useLinkForm";

/** A one-time link that was just made, shown this once. */
export function MadeLink({ link, mailed }: Made) {
  return (
    <div className="grid gap-3">
      <p>
        {mailed ? "The mail has left." : "No mail was sent: tell the link yourself."} It is shown this once.
      </p>
      <p className="select-all break-all border border-rule-2 p-2 font-mono text-sm" translate="no">
        {link}
      </p>
    </div>
  );
}
