import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { SelectField } from "@/app/_ui/field/SelectField";
import { TextField } from "@/app/_ui/field/TextField";
import { settleThisNumber } from "@/app/(workspace)/parts/numbers/actions";
import type { Refusal } from "@/lib/access/action";
import type { SettleNumber, TakeNumberBack } from "@/lib/schema/partIdentity";
import type { OpenNumber } from "@/lib/view/partNumbers";

interface Props {
  readonly number: OpenNumber;
  readonly everySite: boolean;
  readonly onSettled: (message: string, back: TakeNumberBack) => void;
}

type Verdict = SettleNumber["verdict"];

const SAID: Readonly<Record<Verdict, string>> = {
  same: "Kept as another number of the part; files that wait follow.",
  other: "Kept: not that part.",
  later: "Put off.",
};

/** The same part, another one, or later; for the same it is said where the number holds, and how one knows. */
export function NumberForm({ number, everySite, onSettled }: Props) {
  const { written, maker, siteCode, suggestions } = number;
  const [partId, setPart] = useState(suggestions[0]?.id ?? "");
  const [where, setWhere] = useState(everySite ? "" : siteCode);
  const [reason, setReason] = useState("");
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [pending, start] = useTransition();
  const send = (verdict: Verdict) =>
    start(async () => {
      const about = { partId: verdict === "later" ? null : partId || null, siteCode: where || null };
      const answer = await settleThisNumber({ written, maker, verdict, reason, ...about });
      setRefusal(answer.ok ? null : answer.error);
      if (answer.ok) onSettled(SAID[verdict], answer.value);
    });
  const places = [
    ...(everySite ? [{ value: "", label: "everywhere" }] : []),
    ...(siteCode ? [{ value: siteCode, label: `in ${siteCode}'s storeroom` }] : []),
  ];
  return (
    <div className="no-print mt-2 grid items-end gap-3 sm:grid-cols-[14rem_12rem_1fr]">
      <SelectField
        label="The part"
        name="partId"
        value={partId}
        empty="None of them"
        error={refusal?.fields?.partId}
        onChange={({ target }) => setPart(target.value)}
        choices={suggestions.map(({ id, number: name, maker: by }) => ({
          value: id,
          label: `${name} (${by})`,
        }))}
      />
      <SelectField
        label="The number holds"
        name="where"
        value={where}
        onChange={({ target }) => setWhere(target.value)}
        choices={places}
      />
      <TextField
        label="How you know"
        name="reason"
        maxLength={400}
        autoComplete="off"
        value={reason}
        error={refusal?.fields?.reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <p className="flex flex-wrap gap-2 sm:col-span-3">
        <Button aria-disabled={pending || partId === ""} onClick={() => !pending && partId && send("same")}>
          The same part
        </Button>
        <Button kind="quiet" aria-disabled={pending} onClick={() => !pending && send("other")}>
          Another part
        </Button>
        <Button kind="quiet" aria-disabled={pending} onClick={() => !pending && send("later")}>
          Later
        </Button>
      </p>
      <div className="sm:col-span-3">
        <FormMessage kind="problem">{refusal?.reason}</FormMessage>
      </div>
    </div>
  );
}
