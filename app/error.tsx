"use client";

import { Unmade } from "@/app/_ui/Unmade";

interface Props {
  readonly error: Error & { readonly digest?: string };
}

/** When not even the frame of a page could be made. */
export default function FrameError({ error }: Props) {
  return (
    <main className="p-6">
      <Unmade mark={error.digest} />
    </main>
  );
}
