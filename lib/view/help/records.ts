import type { HelpText } from "@/lib/view/help/helpText";

export const recordHelp: readonly HelpText[] = [
  {
    page: "/events",
    title: "Events",
    about: "Every stop and every unit that left its place, and which records may be one event seen twice.",
    read: [
      "A record that is set aside counts in no rate, and says why.",
      "Two registers within three days may tell of one event; until you say so, both count.",
    ],
    next: [
      { text: "Record an event", href: "/events/new" },
      { text: "Load a register of events", href: "/import" },
    ],
    from: "Loaded from registers of work orders and stops, or recorded at the machine.",
  },
  {
    page: "/events/new",
    title: "Record an event",
    about: "At the machine: which unit came out, which went in, from which bin, and how long the line stood.",
    read: [
      "The time is that of the site.",
      "A cause nobody knows is recorded as a removal; it is no failure yet.",
      "The record can be taken back while nobody built on it.",
    ],
    next: [{ text: "See the events", href: "/events" }],
    from: "What you enter; shelf and place move with it in one step.",
  },
  {
    page: "/dates",
    title: "Dates ahead",
    about:
      "Everything with a day: safety and legal duties, last orders, approvals that end, shelves likely to be empty.",
    read: [
      "A safety or legal date binds whatever a line loses.",
      "Likely empty is an estimate (P80), not an appointment.",
    ],
    next: [
      { text: "Have them in your own calendar", href: "/account" },
      { text: "See the notices", href: "/notices" },
    ],
    from: "Days on record, and days computed from the spares.",
  },
  {
    page: "/footing",
    title: "Data footing",
    about: "What is missing, old, contradictory or guessed, by site, and what it is worth to find out.",
    read: [
      "Rests on it is the loss that is worked out with poor records; several gaps may share one loss, so they do not add up.",
      "What to find out next is ordered by how much an hour of work settles.",
    ],
    next: [
      { text: "Compare with what was seen", href: "/sightings" },
      { text: "Load a better register", href: "/import" },
    ],
    from: "Counted on the records; hours from the norms of mending on this page.",
  },
  {
    page: "/footing/*",
    title: "Records with one gap",
    about: "The very records that lack something, each with a way to the place where it is mended.",
    read: [
      "The order is by the loss that rests on the record.",
      "Done disappears by itself once it is mended.",
    ],
    next: [{ text: "Back to all gaps", href: "/footing" }],
    from: "The same count as the board; a record is listed while it has the gap.",
  },
  {
    page: "/sightings",
    title: "Seen and on record",
    about: "Lists that your network tools made, beside the register: what differs a person settles.",
    read: [
      "Ebbline scans nothing; it reads lists made elsewhere.",
      "A machine no list has seen for long is proposed for retirement, and never retired by itself.",
    ],
    next: [
      { text: "Load a network list", href: "/import" },
      { text: "See what is installed", href: "/installed" },
    ],
    from: "The newest list of each network against the register.",
  },
  {
    page: "/import",
    title: "Import",
    about:
      "Load a register file: look at what it says first, take it over as one batch, take it back if it was wrong.",
    read: [
      "Load in this order: supply dates, assets, axis survey, stock, events.",
      "A problem names its row and column, what stands there and what to do.",
      "The same file twice changes nothing.",
    ],
    next: [
      { text: "See the systems files come from", href: "/import/sources" },
      { text: "See what is missing", href: "/footing" },
    ],
    from: "Your own files, as CSV or XLSX.",
  },
  {
    page: "/import/*",
    title: "A file",
    about: "How the file is read, what it would add and change, and which rows wait.",
    read: [
      "A question is asked where dates or decimals can be read two ways.",
      "A row that waits is kept and can be taken up once what it needs is on record.",
    ],
    next: [
      { text: "Settle numbers nobody knows", href: "/parts/numbers" },
      { text: "See all files", href: "/import" },
    ],
    from: "The bytes of the file, compared with what is on record now.",
  },
  {
    page: "/import/sources",
    title: "Systems files come from",
    about: "Each system of a site with how its files are read, so that the next one needs no questions.",
    read: ["A system is found again by its column names, in any order."],
    next: [{ text: "Load a file", href: "/import" }],
    from: "What people confirmed when they loaded files.",
  },
  {
    page: "/import/sources/*",
    title: "A system",
    about: "The columns, the words for nothing and the names one system uses, and what they mean here.",
    read: ["A word that was learned can be forgotten; files loaded before stay as they are."],
    next: [{ text: "See all systems", href: "/import/sources" }],
    from: "What people said a word of this system means.",
  },
];
