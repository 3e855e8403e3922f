import { AsOfLink } from "@/app/_ui/AsOfLink";

/** The name with its mark, falling lines of an ebb; leads to the first page. */
export function Wordmark() {
  return (
    <AsOfLink href="/" className="inline-flex min-h-11 items-center gap-2.5 text-ink no-underline">
      <svg viewBox="0 0 22 22" className="size-[1.375rem] stroke-current" aria-hidden="true">
        <path d="M1 3.5H21M1 8.5H16M1 13.5H11M1 18.5H6" strokeWidth="2" fill="none" />
      </svg>
      <span className="font-semibold text-[1.375rem] leading-none tracking-[-0.01em]">Ebbline</span>
    </AsOfLink>
  );
}
