import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { settleThisPair } from "@/app/(workspace)/events/actions";
import type { Refusal } from "@/lib/access/action";
import type { SettlePair } from "@/lib/schema/eventMatch";
import { type EventPair, fullerOf } from "@/lib/view/eventPair";

interface PairFormProps {
  readonly pair: EventPair;
  readonly onSettled: (message: string, matchId: string) => void;
}

const SAID = { same: "Merged: they count once.", different: "Kept apart: both count." } as const;

/** One event or two, with the reason; the record that says more is proposed as the one that counts. */
export function PairForm({ pair, onSettled }: PairFormProps) {
  const { first, second } = pair;
  const [keptId, setKept] = useState(() => fullerOf(pair).id);
  const [reason, setReason] = useState("");
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (verdict: SettlePair["verdict"]) =>
    start(async () => {
      const otherId = keptId === first.id ? second.id : first.id;
      const answer = await settleThisPair({ keptId, otherId, verdict, reason });
      setRefusal(answer.ok ? null : answer.error);
      if (answer.ok) onSettled(SAID[verdict], answer.value.matchId);
    });
  return (
    <div className="no-print mt-2 grid items-end gap-3 sm:grid-cols-[14rem_1fr_auto]">
      <SelectField
        label="The record that counts"
        name="keptId"
        required
        value={keptId}
        onChange={({ target }) => setKept(target.value)}
        choices={[first, second].map(({ id, source, reference }) => ({
          value: id,
          label: `${source} ${reference}`,
        }))}
      />
      <TextField
        label="How you know"
        name="reason"
        required
        maxLength={400}
        autoComplete="off"
        value={reason}
        error={refusal?.fields?.reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <p className="flex flex-wrap gap-2">
        <Button aria-disabled={pending} onClick={() => !pending && send("same")}>
          One event
        </Button>
        <Button kind="quiet" aria-disabled={pending} onClick={() => !pending && send("different")}>
          Two events
        </Button>
      </p>
      <div className="sm:col-span-3">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      </div>
    </div>
  );
}
