import { EventEmitter } from "node:events";
import { Logger, parseCronItems, run, type WorkerEvents } from "graphile-worker";
import { z } from "zod";
import { noteTrouble } from "@/lib/access/securityLog";
import { askDueDigests, sendDigest } from "@/lib/data/group/digestMails";
import { askDueReports, issueDueReport } from "@/lib/data/group/dueReports";
import { groupZone } from "@/lib/data/group/groupZone";
import { keepQueueAlive } from "@/lib/data/group/livingQueue";
import { sendReport } from "@/lib/data/group/reportMails";
import { weeklySnapshot } from "@/lib/data/group/weeklySnapshot";
import { sendWaiting } from "@/lib/data/interface/sendWaiting";
import { databaseUrl } from "@/lib/env";
import { deliverMail } from "@/lib/jobs/deliverMail";
import { sendWebhook } from "@/lib/jobs/sendWebhook";
import { reportSlot } from "@/lib/schema/report";

const IDLE_POLL_MS = 60_000;
const CONNECTIONS = 3;

const mailJob = z.object({ mailId: z.uuid() });
const webhookJob = z.object({ webhookId: z.uuid() });

/** Says only what went wrong; a quiet queue needs no lines in the log. */
const logger = new Logger(() => (level, message) => {
  if (level === "error") noteTrouble("job queue", message);
});

export interface Jobs {
  /** Lets what runs end, and takes up no more. */
  stop(): Promise<void>;
}

/**
 * Starts the queue of recurring work in this process; several processes on one database share the work.
 *
 * Each hour of the days on which it is Monday anywhere the weekly snapshot is asked for; it is taken once. A little
 * later the mails that are due by the clock of each person's site are asked for, each once; one that cannot leave is
 * tried again by the queue. Every hour the reports are made that are due by the clock of each site, each once.
 */
export async function startJobs(): Promise<Jobs> {
  const events: WorkerEvents = new EventEmitter();
  const alive: (() => Promise<void>)[] = [];
  events.on("pool:create", ({ workerPool }) => alive.push(keepQueueAlive(workerPool.id)));
  const runner = await run({
    events,
    connectionString: databaseUrl(),
    maxPoolSize: CONNECTIONS,
    concurrency: 1,
    pollInterval: IDLE_POLL_MS,
    noHandleSignals: true,
    logger,
    taskList: {
      weeklySnapshot: async () => {
        await weeklySnapshot(new Date().toISOString(), await groupZone());
      },
      weeklyDigests: async () => {
        await askDueDigests(new Date().toISOString());
      },
      dueReports: async () => {
        await askDueReports(new Date().toISOString(), await groupZone());
      },
      issueReport: (payload) => issueDueReport(reportSlot.parse(payload)),
      sendReport: (payload) => sendReport(mailJob.parse(payload).mailId, deliverMail),
      sendWebhook: (payload) => sendWaiting(webhookJob.parse(payload).webhookId, sendWebhook),
      sendDigest: (payload) => sendDigest(mailJob.parse(payload).mailId, deliverMail),
    },
    parsedCronItems: parseCronItems([
      { task: "weeklySnapshot", match: "0 * * * 0,1,2", identifier: "weekly snapshot" },
      { task: "weeklyDigests", match: "10 * * * 0,1,2", identifier: "weekly digests" },
      // The month's first day and the week's begin somewhere at any hour.
      { task: "dueReports", match: "20 * * * *", identifier: "due reports" },
    ]),
  });
  return {
    stop: async () => {
      await runner.stop();
      await Promise.all(alive.map((letGo) => letGo()));
    },
  };
}
