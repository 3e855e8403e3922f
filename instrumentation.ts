/** Called by Next once, when the web server starts. */
export async function register(): Promise<void> {
  // Written out here, since only so does the build leave the queue out of runtimes that are not Node.
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { startJobs } = await import("@/lib/jobs/startJobs");
    await startJobs();
  }
}
