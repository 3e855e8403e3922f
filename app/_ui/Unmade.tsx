"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/_ui/Button";
import { PageHeader } from "@/app/_ui/PageHeader";

interface Props {
  /** What the log has the fault under. */
  readonly mark: string | undefined;
}

const LOOK_MS = 3_000;
const ANSWER_MS = 5_000;

type Health = "unknown" | "well" | "away";

async function askHealth(): Promise<Health> {
  return fetch("/api/health", { cache: "no-store", signal: AbortSignal.timeout(ANSWER_MS) }).then(
    (answer) => (answer.ok ? "well" : "away"),
    () => "away",
  );
}

/** Instead of a page that could not be made: what is wrong, and the page by itself once Ebbline is well again. */
export function Unmade({ mark }: Props) {
  const [health, setHealth] = useState<Health>("unknown");
  useEffect(() => {
    let wasAway = false;
    let next: ReturnType<typeof setTimeout>;
    const look = async () => {
      const found = await askHealth();
      if (found === "well" && wasAway) window.location.reload();
      wasAway = found === "away";
      setHealth(found);
      next = setTimeout(look, LOOK_MS);
    };
    void look();
    return () => clearTimeout(next);
  }, []);
  const again = (
    <Button kind="primary" onClick={() => window.location.reload()}>
      Try again
    </Button>
  );
  if (health === "away")
    return (
      <PageHeader
        title="Ebbline does not reach its database"
        lead="What was saved is safe. This page asks again every three seconds and comes back by itself; if it takes long, tell who runs Ebbline."
        actions={again}
      />
    );
  return (
    <PageHeader
      title="This page could not be made"
      lead={`Nothing you entered elsewhere is lost. If it stays so, tell who runs Ebbline the mark ${mark ?? "of this hour"}; the log has the rest.`}
      actions={again}
    />
  );
}
