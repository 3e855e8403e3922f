import { useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { switchAccount } from "@/app/(workspace)/people/actions";
import type { Person } from "@/lib/data/people";

interface AccountSwitchProps {
  readonly person: Person;
  readonly onSwitched: () => void;
  readonly onRefused: (reason: string) => void;
}

/** Closes an open account and opens a closed one. */
export function AccountSwitch({ person, onSwitched, onRefused }: AccountSwitchProps) {
  const [pending, start] = useTransition();
  const press = () => {
    if (pending) return;
    start(async () => {
      const answer = await switchAccount({ userId: person.userId, closed: !person.closed });
      if (answer.ok) onSwitched();
      else onRefused(answer.error.reason);
    });
  };
  return (
    <Button kind="quiet" aria-disabled={pending} onClick={press}>
      {person.closed ? "Open account" : "Close account"}
    </Button>
  );
}
