/** A small clock beside a value whose source nobody has read for long; `text` says since when. */
export function StaleMark({ text }: { readonly text: string }) {
  return (
    <span className="inline-flex items-center align-[-0.1em]" title={text}>
      <svg
        viewBox="0 0 16 16"
        className="size-[0.95em] fill-none stroke-[1.6] stroke-ink-2"
        aria-hidden="true"
      >
        <circle cx="8" cy="8" r="6.5" />
        <path d="M8 4.2V8L10.6 9.8" />
      </svg>
      <span className="sr-only">{text}</span>
    </span>
  );
}
