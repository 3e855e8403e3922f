"use client";

import { useState } from "react";
import { EmptyState } from "@/app/_ui/EmptyState";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { PressOnce } from "@/app/(workspace)/interface/_components/PressOnce";
import { resendDelivery } from "@/app/(workspace)/interface/actions";
import type { DeliveryRow } from "@/lib/data/webhooks";
import { moment } from "@/lib/view/time";
import { deliveryState, subjectWord } from "@/lib/view/webhook";

const HEADS = ["About", "Written", "State", "Answer", "Message", { text: "Change", print: false }];

/** The messages to one address, with what came back. */
export function Deliveries({ rows }: { readonly rows: readonly DeliveryRow[] }) {
  const [problem, setProblem] = useState<string | null>(null);
  if (rows.length === 0)
    return (
      <EmptyState title="No message yet">
        One is written with the next change of its kind; a trial shows now whether the way is open.
      </EmptyState>
    );
  return (
    <>
      <FormMessage kind="problem">{problem}</FormMessage>
      <RowTable caption="Messages" heads={HEADS}>
        {rows.map((row) => (
          <tr key={row.id}>
            <td>{subjectWord(row.subject)}</td>
            <td>{moment(row.createdAt, "UTC")} UTC</td>
            <td>{deliveryState(row)}</td>
            <td className="break-words">
              {row.status === null ? "" : `${row.status} `}
              {row.answer ?? "None yet"}
            </td>
            <td>
              <details>
                <summary>{row.id.slice(0, 8)}</summary>
                <code className="break-all text-sm">{row.body}</code>
              </details>
            </td>
            <td className="no-print">
              {row.state === "waiting" ? null : (
                <PressOnce
                  text="Send again"
                  label={`Send message ${row.id.slice(0, 8)} again`}
                  kind="quiet"
                  run={() => resendDelivery({ deliveryId: row.id })}
                  onAnswer={setProblem}
                />
              )}
            </td>
          </tr>
        ))}
      </RowTable>
    </>
  );
}
