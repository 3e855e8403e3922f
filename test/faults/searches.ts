import { demoAccounts } from "@/seed/accounts";
import { actionNumber, callAction, signInAs } from "@/test/faults/actionCaller";
import { type Load, untilDone } from "@/test/faults/loadParts";
import { on } from "@/test/support/archives";

const FILE = "app/(workspace)/plans/[id]/actions.ts";
const SECONDS = 8;
const PAUSE_MS = 500;

/** Has the plan searched again and again by the button of its page. */
export async function searchPlans(load: Load): Promise<void> {
  const { installation, tools, ledger } = load;
  const action = actionNumber(FILE, "startThisSolve");
  const engineer = demoAccounts.find(({ role }) => role === "engineer");
  if (!engineer) throw new Error("the demonstration has no engineer");
  const address = () => installation.application().address;
  const cookie = await untilDone(() => signInAs(address(), engineer.email, engineer.password));
  while (!load.stopping()) {
    const [plan] = await untilDone(() =>
      on(installation.url, (client) =>
        client.query<{ version: number }>(`SELECT "version" FROM "Plan" WHERE "id" = $1`, [tools.planId]),
      ),
    ).then(({ rows }) => rows);
    const input = { planId: tools.planId, version: plan?.version, timeLimitSeconds: SECONDS };
    const path = `/plans/${tools.planId}`;
    const answer = await callAction({ address: address(), path, action, cookie, input });
    const started = answer as { ok: boolean; value?: { runId: string } } | undefined;
    if (started?.ok && started.value) {
      ledger.searches.add(started.value.runId);
      ledger.underWay.set("search", "a search for a plan");
      await untilEnded(load, started.value.runId);
      ledger.underWay.delete("search");
    }
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
}

async function untilEnded(load: Load, runId: string): Promise<void> {
  const isRunning = async () => {
    const { rows } = await on(load.installation.url, (client) =>
      client.query<{ state: string }>(`SELECT "state"::text FROM "SolveRun" WHERE "id" = $1`, [runId]),
    );
    return rows[0]?.state === "running";
  };
  while (!load.stopping() && (await untilDone(isRunning)))
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
}
