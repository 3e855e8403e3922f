"use client";

import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { UndoBar } from "@/app/_ui/UndoBar";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { setThisFactorRule } from "@/app/(workspace)/people/actions";
import type { Role } from "@/lib/access/policy";
import { roles } from "@/lib/view/roles";

/** The roles whose holders must have a second factor. */
export function FactorRule({ required }: { readonly required: readonly Role[] }) {
  const { done, tell, undo, close } = useDone();
  const [ticked, setTicked] = useState<readonly Role[]>(required);
  const [pending, start] = useTransition();
  const wanted = roles.map(({ role }) => role).filter((role) => ticked.includes(role));
  const save = () =>
    start(async () => {
      const answer = await setThisFactorRule({ roles: wanted, seen: [...required] });
      if (!answer.ok) return tell({ message: answer.error.reason });
      tell({
        message: "Who must have a second factor was changed.",
        undo: () => setThisFactorRule({ roles: [...required], seen: wanted }),
      });
    });
  return (
    <>
      <div className="flex flex-wrap gap-x-6 gap-y-1">
        {roles.map(({ role, name }) => (
          <CheckboxField
            key={role}
            label={name}
            name={`factor-${role}`}
            checked={ticked.includes(role)}
            onChange={({ target }) =>
              setTicked(target.checked ? [...ticked, role] : ticked.filter((one) => one !== role))
            }
          />
        ))}
      </div>
      <div className="mt-3">
        <Button disabled={pending || wanted.join() === required.join()} onClick={save}>
          Save
        </Button>
      </div>
      <UndoBar message={done?.message ?? null} {...(done?.undo ? { onUndo: undo } : {})} onClose={close} />
    </>
  );
}
