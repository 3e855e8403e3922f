import { type ControllersInShort, firmwareWords } from "@/lib/view/lineControllers";

/** The leading controller with its levels, and a mark when one of the line stands below the floor. */
export function FirmwareCell({ control }: { readonly control: ControllersInShort }) {
  const { lead, all, below, unread } = control;
  if (lead === null) return <span className="text-ink-3">not known</span>;
  return (
    <span className="inline-grid gap-0.5 whitespace-nowrap">
      <span>
        {lead.model} <span className="text-ink-2">level {firmwareWords(lead)}</span>
      </span>
      <span className="text-ink-2 text-xs">
        {below === 0 ? null : (
          <span
            className="mr-1.5 border border-worse px-1 text-ink"
            title={`${below} of ${all} controllers do not run the new drives as they are`}
          >
            <span aria-hidden="true">▼ </span>
            Firmware floor: {below} of {all}
          </span>
        )}
        {unread === 0 ? null : `${unread} not read`}
      </span>
    </span>
  );
}
