"use client";

import { Unmade } from "@/app/_ui/Unmade";

interface Props {
  readonly error: Error & { readonly digest?: string };
}

export default function WorkspaceError({ error }: Props) {
  return <Unmade mark={error.digest} />;
}
