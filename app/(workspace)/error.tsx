"use client";

import { Button } from "@/app/_ui/Button";
import { PageHeader } from "@/app/_ui/PageHeader";

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

export default function WorkspaceError({ error, reset }: Props) {
  return (
    <PageHeader
      title="This page could not be made"
      lead={
        <>
          Nothing you entered elsewhere is lost. If it stays so, tell who runs Ebbline the mark{" "}
          {error.digest ?? "of this hour"}; the log has the rest.
        </>
      }
      actions={
        <Button kind="primary" onClick={reset}>
          Try again
        </Button>
      }
    />
  );
}
