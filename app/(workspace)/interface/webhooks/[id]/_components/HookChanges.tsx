"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { FormMessage } from "@/app/_ui/FormMessage";
import { PressOnce } from "@/app/(workspace)/interface/_components/PressOnce";
import { SecretOnce } from "@/app/(workspace)/interface/_components/SecretOnce";
import {
  dropWebhook,
  renewWebhookSecret,
  switchWebhook,
  tryWebhook,
} from "@/app/(workspace)/interface/actions";
import type { WebhookRow } from "@/lib/data/webhooks";
import { moment } from "@/lib/view/time";

/** What can be done about one webhook. */
export function HookChanges({ hook }: { readonly hook: WebhookRow }) {
  const router = useRouter();
  const [problem, setProblem] = useState<string | null>(null);
  const [secret, setSecret] = useState<string | null>(null);
  const { id: webhookId, version, disabledAt, formerUntil } = hook;
  const inUse = disabledAt === null;
  return (
    <>
      <FormMessage kind="problem">{problem}</FormMessage>
      <SecretOnce what="The new secret; the former one signs beside it for a day" secret={secret} />
      {formerUntil === null ? null : (
        <p className="text-ink-2">The former secret signs too until {moment(formerUntil, "UTC")} UTC.</p>
      )}
      <div className="no-print mt-3 mb-6 flex flex-wrap gap-2">
        <PressOnce text="Send a trial" run={() => tryWebhook({ webhookId })} onAnswer={setProblem} />
        <PressOnce
          text={inUse ? "Take out of use" : "Use again"}
          run={() => switchWebhook({ webhookId, version, inUse: !inUse })}
          onAnswer={setProblem}
        />
        <PressOnce
          text="Make a new secret"
          run={() => renewWebhookSecret({ webhookId })}
          onAnswer={setProblem}
          onDone={(made) => setSecret(made.secret)}
        />
        <PressOnce
          text="Remove with its messages"
          kind="danger"
          run={() => dropWebhook({ webhookId })}
          onAnswer={setProblem}
          onDone={() => router.push("/interface")}
        />
      </div>
    </>
  );
}
