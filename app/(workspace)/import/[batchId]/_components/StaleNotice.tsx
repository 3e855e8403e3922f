"use client";

import { useRouter } from "next/navigation";
import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { Notice } from "@/app/_ui/Notice";
import { readOnceMore } from "@/app/(workspace)/import/actions";

/** A long file is not read anew by merely looking at it; loading always compares with what is stored then. */
export function StaleNotice({ batchId }: { readonly batchId: string }) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const again = () =>
    start(async () => {
      await readOnceMore({ batchId });
      router.refresh();
    });
  return (
    <Notice kind="caution" title="The records have changed since this file was read">
      What it would add and change stands below as it was then. Loading compares it anew.{" "}
      <Button onClick={again} disabled={pending}>
        Read it again
      </Button>
    </Notice>
  );
}
