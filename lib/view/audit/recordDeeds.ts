import type { DeedArea } from "@/lib/view/audit/deedArea";

/** Deeds on what is installed, on the shelf and on record. */
export const recordDeeds: Readonly<Record<string, DeedArea>> = {
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
};
