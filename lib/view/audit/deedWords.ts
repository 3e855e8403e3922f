/** What was done, in words, by area and deed as the audit keeps them. */
export const AREAS: Readonly<Record<string, { readonly title: string; readonly deeds: Readonly<Record<string, string>> }>> =
  {
    line: { title: "Lines", deeds: { figures: "Changed the figures of a line" } },
    machine: {
      title: "Machines",
      deeds: { retire: "Took a machine out of service", restore: "Put a machine back into service" },
    },
    position: {
      title: "Places",
      deeds: { retire: "Took a place out of service", restore: "Put a place back into service" },
    },
    axis: {
      title: "Axes",
      deeds: {
        facts: "Changed what is known of an axis",
        record: "Wrote in the record of an axis",
        accept: "Accepted an axis",
        reopen: "Opened an accepted axis again",
        mark: "Marked a step of axes as done",
        unmark: "Took back a step of axes",
        round: "Started another round of axes",
      },
    },
    panel: {
      title: "Panels",
      deeds: {
        add: "Added a panel",
        change: "Changed a panel",
        remove: "Removed a panel",
        place: "Put a place into a panel",
        "put-back": "Put a removed panel back",
      },
    },
    controller: { title: "Controllers", deeds: { plate: "Changed what a controller's plate says" } },
    network: { title: "Networks", deeds: { plate: "Changed what is known of a network" } },
    backup: {
      title: "Copies of controllers",
      deeds: { add: "Recorded a copy", remove: "Removed a copy", "put-back": "Put a removed copy back" },
    },
    contact: {
      title: "Numbers to call",
      deeds: { add: "Added a number", remove: "Removed a number", "put-back": "Put a removed number back" },
    },
    part: {
      title: "Parts",
      deeds: {
        plate: "Changed what is known of a part",
        merge: "Merged two parts",
        unmerge: "Parted two merged parts",
      },
    },
    number: {
      title: "Numbers to settle",
      deeds: {
        same: "Said that a number means a part",
        other: "Said that a number means another part",
        new: "Said that a number is a new part",
        later: "Put a number off",
        back: "Took back what a number means",
      },
    },
    stock: {
      title: "Stock",
      deeds: {
        lot: "Corrected a bin",
        count: "Booked a count",
        "count-undo": "Took back a count",
        repair: "Moved pieces for a repair",
        "repair-undo": "Took back pieces of a repair",
        release: "Put pieces on the shelf",
        "release-undo": "Took back pieces put on the shelf",
        hold: "Put pieces on hold",
        care: "Moved pieces for their storage care",
        "care-undo": "Took back pieces of a care",
        transfer: "Moved pieces between sites",
      },
    },
    hold: { title: "Holds", deeds: { set: "Set a hold", release: "Ended a hold" } },
    care: {
      title: "Storage care",
      deeds: { record: "Recorded a care", undo: "Took back a care", interval: "Changed how often care is due" },
    },
    count: {
      title: "Counts",
      deeds: {
        open: "Opened a count",
        line: "Wrote what was counted",
        find: "Wrote down a find",
        drop: "Removed a find",
        approve: "Approved a count",
        post: "Booked a count",
        undo: "Took back a booked count",
        "give-up": "Gave up a count",
      },
    },
    repair: {
      title: "Repairs",
      deeds: {
        send: "Sent a unit for repair",
        change: "Changed a repair",
        receive: "Received a unit from repair",
        undo: "Took back a received repair",
      },
    },
    transfer: {
      title: "Transfers between sites",
      deeds: {
        ask: "Asked for pieces of another site",
        agree: "Agreed to send pieces",
        refuse: "Refused to send pieces",
        send: "Sent pieces",
        receive: "Received pieces",
        withdraw: "Withdrew a request for pieces",
        "off-shelf": "Took pieces to send off the shelf",
        "on-shelf": "Put received pieces on the shelf",
        "back-on-shelf": "Put pieces that were not sent back on the shelf",
        "off-shelf-again": "Took received pieces off the shelf again",
      },
    },
    event: {
      title: "Events",
      deeds: {
        add: "Recorded an event",
        undo: "Took back an event",
        same: "Said that two records are one event",
        different: "Said that two records are two events",
        part: "Took back what was said of two records",
      },
    },
    obligation: {
      title: "Safety and legal dates",
      deeds: {
        add: "Added a safety or legal date",
        change: "Changed a safety or legal date",
        settle: "Settled a safety or legal date",
        remove: "Removed a safety or legal date",
      },
    },
    notice: { title: "Notices", deeds: { add: "Kept a maker's notice", undo: "Took back a notice" } },
    decision: { title: "Decisions to buy", deeds: { keep: "Kept a decision to buy" } },
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
    fit: { title: "Fitted units", deeds: { record: "Recorded a fitted unit", drop: "Took back a fitted unit" } },
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
      deeds: { issue: "Gave a report out", wish: "Asked for a report by mail", unwish: "Ended a report by mail" },
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
      },
    },
    session: {
      title: "Sign-ins",
      deeds: {
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

/** What was done, in words; a deed without words of its own is named by its area. */
export function deedWords(deed: string): string {
  const [area = "", what = ""] = deed.split(/:(.*)/s);
  const known = AREAS[area];
  if (known === undefined) return `Changed something (${deed})`;
  return known.deeds[what] ?? `${known.title}: ${what.replaceAll(/[:-]/g, " ")}`;
}
