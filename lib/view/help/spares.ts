import type { HelpText } from "@/lib/view/help/helpText";

export const spareHelp: readonly HelpText[] = [
  {
    page: "/spares",
    title: "Spares, weekly look",
    about: "Which pools of spares got worse in a week, and where the pieces lie.",
    read: [
      "A pool got worse when its stage, its chance or its day of running out moved to the worse side.",
      "A share above 1.5 means that a site holds more than its demand explains.",
    ],
    next: [
      { text: "Hold the weekly review", href: "/review" },
      { text: "See what runs out first", href: "/cover" },
      { text: "Move pieces between sites", href: "/pool" },
    ],
    from: "Computed for today and for seven days before, from the records of all sites.",
  },
  {
    page: "/cover",
    title: "Cover ladder",
    about: "How long the spares of each part last, with the cheap parts that stop most at the top.",
    read: [
      "P80 is the day by which the shelf is empty with a chance of 80 %.",
      "Exit gap is that day less the day the last unit leaves: below zero, machines still run after the spares are gone.",
      "A part without a price stands after the rest; it is neither cheap nor dear.",
    ],
    next: [
      { text: "Spend money where it helps most", href: "/spend" },
      { text: "See the pools of all sites", href: "/pool" },
    ],
    from: "Computed from rates of removal, usable pieces, repair and planned removals.",
  },
  {
    page: "/spend",
    title: "Where to spend next",
    about: "Type a budget and see the next best piece to buy for the money, again and again.",
    read: [
      "Each row is one more piece: what it costs and which loss it avoids over the years looked at.",
      "The curve flattens where more money saves little.",
    ],
    next: [
      { text: "See how long spares last", href: "/cover" },
      { text: "Decide in the weekly review", href: "/review" },
    ],
    from: "Computed from the loss with and without one more piece, and the prices on record.",
  },
  {
    page: "/pool",
    title: "Pool board",
    about:
      "Who holds what share of the usable pieces against what share of the demand, and which moves would help.",
    read: [
      "A move shows both sites before and after.",
      "Customs marks a move over a border that needs papers.",
      "A request is asked for, agreed or refused, sent and received, each by its own site's people.",
    ],
    next: [{ text: "See where spares lie", href: "/spares" }],
    from: "Computed from stock and rates of all sites; requests are what people entered.",
  },
  {
    page: "/pool/*",
    title: "The pool of a part",
    about: "All sites' pieces of one part, what each needs, and what a move would change.",
    read: [
      "Usable is the number of pieces expected to work when needed.",
      "A move that leaves the giving site short is said so.",
    ],
    next: [{ text: "Back to all pools", href: "/pool" }],
    from: "Computed from the stock and the demand of every site for this part.",
  },
  {
    page: "/counts",
    title: "Counts",
    about: "Count bins on a phone, compare with the book, and book the differences once they are approved.",
    read: [
      "A blind count hides the book, so that nobody counts what they expect.",
      "Above the limit a second person approves.",
    ],
    next: [{ text: "See the pieces in care", href: "/care" }],
    from: "Entered by whoever counted; the book is the stock on record when the count was opened.",
  },
  {
    page: "/counts/*",
    title: "A count",
    about: "The bins of one count, to be filled in at the shelf, with or without a connection.",
    read: [
      "What you type stays on this device until the server has it.",
      "A find is a piece that no bin of the count should hold.",
    ],
    next: [{ text: "See all counts", href: "/counts" }],
    from: "Entered at the shelf; nothing is booked before it is approved.",
  },
  {
    page: "/counts/*/variance",
    title: "Differences of a count",
    about:
      "What was counted against the book, with the value of each difference, to approve and book in one step.",
    read: [
      "A difference without a price has no value on record; that is not zero.",
      "A booked count can be taken back while nobody moved the pieces since.",
    ],
    next: [{ text: "See all counts", href: "/counts" }],
    from: "The count less the book; values from the prices on record.",
  },
  {
    page: "/care",
    title: "Storage care",
    about: "Which stored drives wait for their power-up or test, the longest overdue first.",
    read: [
      "Due is the last care plus the interval of its kind.",
      "Drives stored for years need a competent person before they are powered.",
    ],
    next: [{ text: "See levels and surplus", href: "/levels" }],
    from: "Computed from the last care on record and the intervals your site set.",
  },
  {
    page: "/repairs",
    title: "Repairs",
    about: "Units away for repair, the longest overdue first, and how each repairer does.",
    read: [
      "Overdue is past its due day, or past the usual turn-around where no day is known.",
      "Works again is the share of units that came back usable; few repairs give a wide span.",
    ],
    next: [
      { text: "See what spares got worse", href: "/spares" },
      { text: "Go through it in the review", href: "/review" },
    ],
    from: "Entered when a unit is sent and received; turn-around from the part's record.",
  },
  {
    page: "/levels",
    title: "Levels and surplus",
    about:
      "The least and the most of each part a site should hold for the chance of an empty shelf you choose, and what lies beyond it.",
    read: [
      "Each site stands on its own here: a spare of another site counts nothing.",
      "Surplus is offered to other sites first; mind export, customs and waste rules.",
    ],
    next: [
      { text: "Offer it to another site", href: "/pool" },
      { text: "Spend what is missing", href: "/spend" },
    ],
    from: "Computed from removals over the lead time and the chance of an empty shelf chosen on the page.",
  },
  {
    page: "/review",
    title: "Weekly reviews",
    about: "Half an hour a week at a site: what got worse, what to order, who does what until when.",
    read: [
      "Only what got worse since the last closed review is shown, with the reason.",
      "A closed review stands as it was shown.",
    ],
    next: [
      { text: "See the spares", href: "/spares" },
      { text: "Ask for it by mail", href: "/account" },
    ],
    from: "The same figures as the pages of spares, narrowed to one site.",
  },
  {
    page: "/review/*",
    title: "A weekly review",
    about: "One meeting: go down the list, write actions with a name and a day, and close it.",
    read: [
      "Actions that were not done are carried over.",
      "When somebody changes records meanwhile, you are asked to look again before closing.",
    ],
    next: [{ text: "See all reviews", href: "/review" }],
    from: "Compared with the last closed review of the site, else the last snapshot, else a week earlier.",
  },
];
