"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { TextField } from "@/app/_ui/field/TextField";
import { RowTable } from "@/app/_ui/RowTable";
import { endMyOtherSessions, endMySession } from "@/app/(workspace)/account/actions";
import { moment } from "@/lib/view/time";

interface Session {
  readonly id: string;
  readonly isThis: boolean;
  readonly device: string | null;
  readonly address: string | null;
  readonly openedAt: string;
  readonly usedAt: string;
}

interface SessionsProps {
  readonly sessions: readonly Session[];
  readonly zone: string;
  /** Whether ending one asks the own password. */
  readonly asksPassword: boolean;
}

const HEADS = ["Browser, as it names itself", "Network address", "Signed in", "Last used", "End"];

/** Where the person is signed in, each to be ended from here. */
export function Sessions({ sessions, zone, asksPassword }: SessionsProps) {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [problem, setProblem] = useState<string | null>(null);
  const [password, setPassword] = useState("");
  const run = (end: () => ReturnType<typeof endMySession | typeof endMyOtherSessions>) =>
    start(async () => {
      const ended = await end();
      setProblem(ended.ok ? null : ended.error.reason);
      if (ended.ok) setPassword("");
      router.refresh();
    });
  return (
    <>
      <FormMessage kind="problem">{problem}</FormMessage>
      {asksPassword && sessions.length > 1 ? (
        <div className="mb-3 max-w-[27rem]">
          <TextField
            label="Your password, to end one"
            name="ownPassword"
            type="password"
            autoComplete="current-password"
            value={password}
            onChange={({ target }) => setPassword(target.value)}
          />
        </div>
      ) : null}
      <RowTable caption="Where you are signed in" heads={HEADS}>
        {sessions.map(({ id, isThis, device, address, openedAt, usedAt }) => (
          <tr key={id}>
            <th scope="row" className="max-w-[28rem] break-words">
              {device ?? "not said"}
            </th>
            <td>{address ?? "not known"}</td>
            <td>{moment(openedAt, zone)}</td>
            <td>{moment(usedAt, zone)}</td>
            <td>
              {isThis ? (
                "this one"
              ) : (
                <Button
                  disabled={pending}
                  onClick={() => run(() => endMySession({ sessionId: id, password }))}
                >
                  End it
                </Button>
              )}
            </td>
          </tr>
        ))}
      </RowTable>
      {sessions.length > 1 ? (
        <div className="mt-3">
          <Button
            kind="danger"
            disabled={pending}
            onClick={() => run(() => endMyOtherSessions({ password }))}
          >
            End all but this one
          </Button>
        </div>
      ) : null}
    </>
  );
}
