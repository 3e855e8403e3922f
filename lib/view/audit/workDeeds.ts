import type { DeedArea } from "@/lib/view/audit/deedArea";

/** Deeds in plans and projects, on what figures rest on, and of people. */
export const workDeeds: Readonly<Record<string, DeedArea>> = {
  plan: {
    title: "Plans",
    deeds: {
      make: "Started a plan over years",
      keep: "Kept a cut by a budget",
      place: "Moved a line in a plan",
      pin: "Held a line in a plan",
      fill: "Took over a found plan",
      write: "Changed where a plan stands",
      approve: "Decided on a plan",
      "put-forward": "Put a plan forward",
      issue: "Started another issue of a plan",
      delete: "Deleted a plan",
      solve: "Started a search for a plan",
      "solve-stop": "Stopped a search for a plan",
    },
  },
  figure: {
    title: "Planning figures",
    deeds: { state: "Stated a planning figure", withdraw: "Withdrew a planning figure" },
  },
  window: { title: "Shutdowns", deeds: { save: "Wrote down a shutdown", remove: "Removed a shutdown" } },
  freeze: {
    title: "Times without approvals",
    deeds: { save: "Wrote down a time without approvals", remove: "Removed a time without approvals" },
  },
  precedence: {
    title: "Order of lines",
    deeds: { add: "Said which line goes first", remove: "Took back which line goes first" },
  },
  risk: { title: "Accepted risks", deeds: { accept: "Accepted a risk", end: "Ended an accepted risk" } },
  project: {
    title: "Projects",
    deeds: {
      start: "Started a project",
      change: "Changed a project",
      remove: "Removed a project",
      milestone: "Changed a milestone",
      split: "Split the budget",
      rest: "Changed what is still to be spent",
      cost: "Changed an order or a payment",
      costs: "Loaded or took back a file of costs",
      ask: "Changed a request for more money",
      decide: "Decided on a request for more money",
      close: "Closed a project",
      reopen: "Opened a closed project again",
    },
  },
  schedule: {
    title: "Schedules",
    deeds: {
      add: "Added a task",
      change: "Changed a task",
      remove: "Removed a task",
      task: "Wrote how a task went",
      replan: "Put another plan in force",
    },
  },
  gate: {
    title: "Gates",
    deeds: {
      item: "Ticked a point of a gate",
      add: "Added a point to a gate",
      passed: "Passed a gate",
      held: "Held a gate",
      open: "Opened a gate again",
    },
  },
  cutover: {
    title: "Cutovers",
    deeds: {
      add: "Planned a cutover",
      change: "Changed a cutover",
      drop: "Removed a cutover",
      step: "Changed a step of a cutover",
      clock: "Wrote a time of a cutover",
    },
  },
  point: {
    title: "Open points",
    deeds: {
      add: "Added an open point",
      change: "Changed an open point",
      settle: "Settled an open point",
      drop: "Removed an open point",
    },
  },
  "project-risk": {
    title: "Risks of projects",
    deeds: { add: "Added a risk", change: "Changed a risk", drop: "Removed a risk" },
  },
  release: {
    title: "Removed units",
    deeds: {
      add: "Recorded a removed unit",
      change: "Changed a removed unit",
      drop: "Took back a removed unit",
    },
  },
  fit: {
    title: "Fitted units",
    deeds: { record: "Recorded a fitted unit", drop: "Took back a fitted unit" },
  },
  close: {
    title: "Close-out",
    deeds: { state: "Stated a point of the close-out", withdraw: "Withdrew a statement of the close-out" },
  },
  benefit: {
    title: "Benefit",
    deeds: { check: "Checked the benefit", reopen: "Opened the check of the benefit again" },
  },
  rate: { title: "Currency rates", deeds: { month: "Changed the rate of a month" } },
  rules: { title: "Rules", deeds: { change: "Changed a rule", retire: "Retired a rule" } },
  norm: { title: "Norms of work", deeds: { change: "Changed a norm of work" } },
  effort: { title: "Hours of mending", deeds: { set: "Changed how long mending takes" } },
  assumptions: {
    title: "Assumptions",
    deeds: { state: "Wrote a set of assumptions", choose: "Chose the assumptions in use" },
  },
  snapshot: { title: "Snapshots", deeds: { take: "Took a snapshot" } },
  review: {
    title: "Weekly reviews",
    deeds: {
      open: "Opened a review",
      drop: "Dropped a review",
      note: "Wrote a note",
      close: "Closed a review",
      buy: "Wrote down a purchase",
      unbuy: "Removed a purchase",
      action: "Wrote down an action",
      settle: "Settled an action",
      unaction: "Removed an action",
    },
  },
  report: {
    title: "Reports",
    deeds: {
      issue: "Gave a report out",
      wish: "Asked for a report by mail",
      unwish: "Ended a report by mail",
    },
  },
  digest: {
    title: "Weekly mails",
    deeds: { set: "Asked for the weekly mail", end: "Ended the weekly mail", ask: "Asked for a mail now" },
  },
  import: { title: "Files loaded", deeds: { commit: "Loaded a file", undo: "Took back a file" } },
  source: {
    title: "Systems files come from",
    deeds: {
      add: "Named a system",
      learn: "Taught a word of a system",
      forget: "Forgot a word of a system",
      nulls: "Changed the words for nothing",
    },
  },
  reading: { title: "How files are read", deeds: { set: "Changed how a file is read" } },
  sighting: {
    title: "Seen and on record",
    deeds: { settle: "Settled what was seen", back: "Took back what was settled" },
  },
  people: {
    title: "People",
    deeds: {
      add: "Added a person",
      grants: "Changed somebody's roles",
      close: "Closed an account",
      open: "Opened an account again",
      "first-admin": "Became the first administrator",
      invite: "Invited somebody",
      uninvite: "Withdrew an invitation",
      join: "Followed an invitation",
      renew: "Made a link for a new password",
      renewed: "Set a new password by a link",
      factor: "Changed who must have a second factor",
    },
  },
  session: {
    title: "Sign-ins",
    deeds: {
      open: "Signed in",
      end: "Ended a session",
      endOthers: "Ended the other sessions",
      refuse: "Was refused at the sign-in",
    },
  },
  key: { title: "Access keys", deeds: { make: "Made an access key", revoke: "Revoked an access key" } },
  webhook: {
    title: "Webhooks",
    deeds: {
      make: "Made a webhook",
      use: "Took a webhook into use",
      rest: "Took a webhook out of use",
      secret: "Changed the secret of a webhook",
      try: "Tried a webhook",
      drop: "Removed a webhook",
      resend: "Sent a message again",
    },
  },
  calendar: {
    title: "Calendars",
    deeds: { make: "Made a calendar address", drop: "Ended a calendar address" },
  },
  seed: { title: "Demonstration", deeds: { load: "Wrote the demonstration" } },
};
