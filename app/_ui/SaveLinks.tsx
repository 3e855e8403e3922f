"use client";

import { useSearchParams } from "next/navigation";

const FORMATS = ["csv", "xlsx", "json"] as const;

interface SaveLinksProps {
  /** Name of the list in the address of its file. */
  readonly name: string;
  /** What people call it. */
  readonly title: string;
}

/** A list as a file in each format, narrowed as the page is. */
export function SaveLinks({ name, title }: SaveLinksProps) {
  const asked = useSearchParams();
  return (
    <span className="inline-flex flex-wrap gap-x-4">
      {FORMATS.map((format) => {
        const query = new URLSearchParams(asked);
        query.set("format", format);
        return (
          <a
            key={format}
            href={`/api/export/${name}?${query}`}
            download
            className="inline-flex min-h-8 min-w-6 items-center max-sm:min-h-11"
            aria-label={`${title} as ${format.toUpperCase()}`}
          >
            {format.toUpperCase()}
          </a>
        );
      })}
    </span>
  );
}
