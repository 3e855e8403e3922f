"use client";

import { Button } from "@/app/_ui/Button";
import { EmptyState } from "@/app/_ui/EmptyState";

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

export default function WorkspaceError({ error, reset }: Props) {
  return (
    <EmptyState
      title="This page could not be made"
      actions={
        <Button kind="primary" onClick={reset}>
          Try again
        </Button>
      }
    >
      Nothing you entered elsewhere is lost. If it stays so, tell who runs Ebbline the mark{" "}
      {error.digest ?? "of this hour"}; the log has the rest.
    </EmptyState>
  );
}
