/** Called by Next once, when the web server starts. */
export async function register(): Promise<void> {
  // Written out here, since only so does the build leave the queue out of runtimes that are not Node.
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { listen } = await import("@/lib/words/listen");
    listen();
    const { authUrl, trustsProxy } = await import("@/lib/env");
    const { dressAnswers } = await import("@/lib/access/everyAnswer");
    dressAnswers(() => authUrl().startsWith("https:"));
    const { believeConnections } = await import("@/lib/access/clientAddress");
    if (!trustsProxy()) believeConnections();
    const { startWhenReachable } = await import("@/lib/jobs/startWhenReachable");
    const jobs = startWhenReachable();
    const { warmUp } = await import("@/lib/data/group/currentEvaluation");
    void jobs.then(warmUp).catch((error) => process.stderr.write(`Not warmed up: ${error}\n`));
    // The web server answers what it has begun and ends by itself; so does the queue, as far as that leaves it time.
    process.once("SIGTERM", () => void jobs.then(({ stop }) => stop()));
  }
}
