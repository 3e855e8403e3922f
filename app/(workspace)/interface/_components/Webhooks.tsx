"use client";

import { useState } from "react";
import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Dialog } from "@/app/_ui/Dialog";
import { EmptyState } from "@/app/_ui/EmptyState";
import { RowTable } from "@/app/_ui/RowTable";
import { SecretOnce } from "@/app/(workspace)/interface/_components/SecretOnce";
import { WebhookForm } from "@/app/(workspace)/interface/_components/WebhookForm";
import type { SiteName } from "@/lib/data/siteNames";
import type { WebhookRow } from "@/lib/data/webhooks";
import { hookState, subjectWords } from "@/lib/view/webhook";

interface WebhooksProps {
  readonly hooks: readonly WebhookRow[];
  readonly sites: readonly SiteName[];
}

const HEADS = ["System", "Address", "Told of", "Site", { text: "Waiting", end: true }, "State"];

/** The systems that are told of changes, and the adding of one. */
export function Webhooks({ hooks, sites }: WebhooksProps) {
  const [secret, setSecret] = useState<string | null>(null);
  const add = (
    <Dialog trigger="Add a system" title="Tell a system of changes" wide>
      {(close) => (
        <WebhookForm
          sites={sites}
          onMade={(made) => {
            close();
            setSecret(made);
          }}
        />
      )}
    </Dialog>
  );
  return (
    <>
      <SecretOnce what="The secret messages are signed with" secret={secret} />
      {hooks.length === 0 ? (
        <EmptyState title="No system is told yet" actions={add}>
          Give the address of one; you get the secret its messages are signed with.
        </EmptyState>
      ) : (
        <>
          <div className="no-print my-3">{add}</div>
          <RowTable caption="Systems that are told of changes" heads={HEADS}>
            {hooks.map((hook) => (
              <tr key={hook.id}>
                <td>
                  <AsOfLink href={`/interface/webhooks/${hook.id}`}>{hook.name}</AsOfLink>
                </td>
                <td className="break-all">{hook.address}</td>
                <td>{subjectWords(hook.subjects)}</td>
                <td>{hook.siteCode ?? "All"}</td>
                <td data-align="end">{hook.waiting}</td>
                <td>{hookState(hook)}</td>
              </tr>
            ))}
          </RowTable>
        </>
      )}
    </>
  );
}
