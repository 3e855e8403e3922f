"use client";

import { useRouter } from "next/navigation";
import { Dialog } from "@/app/_ui/Dialog";
import { RowForm } from "@/app/(workspace)/_components/RowForm";
import { makeThisBoard } from "@/app/(workspace)/plans/actions";

/** Starts an empty plan over the years with a budget, and goes there. */
export function NewBoard({ asOf }: { readonly asOf: string }) {
  const router = useRouter();
  return (
    <Dialog trigger="New plan over years" kind="primary" title="New plan over years">
      {(close) => (
        <RowForm
          fields={[{ name: "name", label: "Name of the plan" }]}
          values={{ name: "" }}
          save={async ({ name }) => {
            const made = await makeThisBoard({ name, asOf });
            if (made.ok) router.push(`/plans/${made.value.planId}?asOf=${asOf}`);
            return made;
          }}
          onSaved={close}
        />
      )}
    </Dialog>
  );
}
