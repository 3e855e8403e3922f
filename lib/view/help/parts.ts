import type { HelpText } from "@/lib/view/help/helpText";

export const partHelp: readonly HelpText[] = [
  {
    page: "/parts",
    title: "Parts",
    about:
      "Every part on record with its supply stage, its pieces and the chance of finding the shelf empty.",
    read: [
      "The letter is the supply stage: A open, B notice in hand, C buy window, D orders shut, E repair-fed, F own stock, U undated.",
      "Usable is less than booked: pieces that stood long without power or have the wrong revision count in part.",
      "P50 and P80 are the days by which the shelf is empty with an even chance, and with a chance of 80 %.",
    ],
    next: [
      { text: "Settle numbers nobody knows", href: "/parts/numbers" },
      { text: "See what runs out first", href: "/cover" },
    ],
    from: "Supply dates come from makers' notices with their source; pieces from the stock on record of all sites.",
  },
  {
    page: "/parts/*",
    title: "A part",
    about: "Who has one, until when it can be had, how long the spares last, and where it is used.",
    read: [
      "Book against usable names every deduction, bin by bin.",
      "The rate of removals has a span, because few events are on record.",
      "A chance of 3 % means: of a hundred such parts about three run dry.",
      "The simulation plays the same shelf event by event, to speak against the formula.",
    ],
    next: [
      { text: "See all parts", href: "/parts" },
      { text: "Ask another site for pieces", href: "/pool" },
      { text: "Record a stop", href: "/events/new" },
    ],
    from: "Computed from events, places, stock, repairs and supply dates of the whole group; your own sites are shown in detail.",
  },
  {
    page: "/parts/numbers",
    title: "Numbers to settle",
    about: "Numbers of your files that nothing on record is called, with the parts they may mean.",
    read: [
      "The reason beside a proposal says why it may be the same part; it is a guess until you say so.",
      "Later keeps the number waiting and changes nothing.",
    ],
    next: [
      { text: "Merge two parts that are one", href: "/parts/merge" },
      { text: "See the files", href: "/import" },
    ],
    from: "Read from the files that were loaded, compared with numbers and other spellings on record.",
  },
  {
    page: "/parts/merge",
    title: "Two parts that are one",
    about: "Look at what moves and which losses change, before two records become one part.",
    read: [
      "The kept part gets every place, piece and event of the other.",
      "A merge can be parted again under numbers to settle.",
    ],
    next: [{ text: "Back to the numbers to settle", href: "/parts/numbers" }],
    from: "Computed by evaluating the group with the merge and without it.",
  },
  {
    page: "/notices",
    title: "Notices",
    about: "What makers announced: which parts end, by which day, and what that touches at your sites.",
    read: [
      "Last order is the last day an order is taken; last shipment the last day pieces leave.",
      "A notice can be taken back in one step while nobody built on it.",
    ],
    next: [
      { text: "Keep a new notice", href: "/notices/new" },
      { text: "See the days ahead", href: "/dates" },
    ],
    from: "Pasted or loaded by people from makers' texts; each day keeps its source.",
  },
  {
    page: "/notices/new",
    title: "A new notice",
    about: "Paste a maker's text or load its file; parts and days are proposed, and you confirm them.",
    read: [
      "What is proposed is read from the text by rule and may be wrong: compare it with the text.",
      "Nothing is kept before you have seen what it touches.",
    ],
    next: [{ text: "See the notices on record", href: "/notices" }],
    from: "Read from the text you give; nothing is fetched from elsewhere.",
  },
  {
    page: "/notices/*",
    title: "A notice",
    about: "One notice with its parts, its days and the lines it touches.",
    read: ["Units touched are those installed at your sites.", "The source says where the statement stands."],
    next: [
      { text: "See all notices", href: "/notices" },
      { text: "See the days ahead", href: "/dates" },
    ],
    from: "Kept from the maker's text as a person confirmed it.",
  },
  {
    page: "/last-buy/*",
    title: "How many to buy at the last chance",
    about: "The quantity of a family to buy before orders shut, and which assumption it hangs on.",
    read: [
      "The quantity has a span; the high end covers more futures and costs more.",
      "Change who shares the shelf, whether repair goes on or when lines are retrofitted, and see the quantity move.",
    ],
    next: [
      { text: "See the days ahead", href: "/dates" },
      { text: "Look at the assumptions", href: "/assumptions" },
    ],
    from: "Computed from removals, usable pieces, repair and planned removals of the sites you may read.",
  },
  {
    page: "/last-buy/decisions/*",
    title: "A decision to buy",
    about: "A kept decision with every step it was made by; it reads the same for ever.",
    read: ["The hash proves that the text is the one that was kept."],
    next: [
      { text: "See the parts", href: "/parts" },
      { text: "See who decided what", href: "/audit" },
    ],
    from: "Frozen as text on the day it was decided; nothing in it is computed again.",
  },
];
