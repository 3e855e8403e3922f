import { troubleOf } from "@/lib/access/trouble";
import { type Jobs, startJobs } from "@/lib/jobs/startJobs";

const TRY_AGAIN_MS = 2_000;

/** Starts the queue once the database answers, so that a server started before its database says so and comes round. */
export async function startWhenReachable(): Promise<Jobs> {
  for (;;) {
    try {
      return await startJobs();
    } catch (error) {
      if (troubleOf(error) !== "away") throw error;
      process.stderr.write("Job queue: the database does not answer yet.\n");
    }
    await new Promise((resolve) => setTimeout(resolve, TRY_AGAIN_MS));
  }
}
