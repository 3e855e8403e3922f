import type { HelpText } from "@/lib/view/help/helpText";

export const lineHelp: readonly HelpText[] = [
  {
    page: "/home",
    title: "Today",
    about:
      "What a manager needs in one look: the lines that lose most, the decisions that wait, the projects.",
    read: [
      "The loss is what stops are expected to cost in a year, with a span: in nine of ten drawings it lies inside.",
      "A decision stands here until somebody decides it or its day has passed.",
    ],
    next: [
      { text: "See every line in order", href: "/lines" },
      { text: "See what moved since last time", href: "/moved" },
    ],
    from: "The same figures as the ranking of lines and the monthly report, computed from the records of your sites.",
  },
  {
    page: "/lines",
    title: "Lines by what a stop costs",
    about:
      "Every line in order of what its stops are expected to cost, so that you see where a retrofit matters first.",
    read: [
      "The letter is the supply stage of the line's worst part: A can be bought, F lives on your own shelf, U has no sourced date.",
      "The bar is the span of the loss: the estimate is a range, never one number.",
      "The score of 0 to 100 adds supply, spares and repair; it needs no money, so the two orders may differ.",
      "Fragile means that the order of two lines turns when the uncertain inputs are drawn again.",
      "Not known means that nobody has entered it; it is never counted as zero.",
    ],
    next: [
      { text: "Mend what the figures rest on", href: "/footing" },
      { text: "Cut the ranking by a budget", href: "/plans/new" },
      { text: "See which parts run out first", href: "/cover" },
    ],
    from: "Computed from what is installed, stops on record, supply dates, usable stock and the cost of a stop of each line.",
  },
  {
    page: "/lines/*",
    title: "A line",
    about: "Why this line loses what it loses, step by step, and what stands in the way of a retrofit.",
    read: [
      "Each figure opens to its arithmetic: click its steps down to events and years of service.",
      "Base part is lost even with a spare at hand; shortage part is lost because none is.",
      "A blocker with an open circle stands in the way; each names the rule that says so.",
      "Evidence is m measured, d documented, i inferred or a assumed.",
    ],
    next: [
      { text: "Compare with the other lines", href: "/lines" },
      { text: "See the rules behind the verdicts", href: "/rules" },
      { text: "Record a stop", href: "/events/new" },
    ],
    from: "Computed from the records of the line and the part pools it shares with other lines; the cost of a stop is what your site stated.",
  },
  {
    page: "/lines/*/scope",
    title: "What a retrofit takes",
    about:
      "Per axis the successor and what must come along, with hours, money and the shutdown it fits into.",
    read: [
      "Low, typical and high are given for hours and money; the work is planned with the typical and checked with the high.",
      "A motor without a verdict is not known to fit: sizing needs an engineer.",
      "A window too short means the work does not fit into the shutdown on record.",
    ],
    next: [
      { text: "Put the line into a plan", href: "/plans" },
      { text: "See the shutdowns on record", href: "/plans/inputs" },
    ],
    from: "Computed from axes, successors, rules and norms of work; nothing here sizes a motor or certifies a safety function.",
  },
  {
    page: "/machines/*",
    title: "A machine",
    about:
      "What is in the machine: axes with cables and ends of travel, panels, controllers, copies and numbers to call.",
    read: [
      "A place holds a unit with a serial number, or only says which part belongs there.",
      "Not known means nobody has read it at the machine.",
      "Seen last tells when a network list or a person last found it.",
    ],
    next: [
      { text: "Find all axes in one list", href: "/axes" },
      { text: "See what network lists saw", href: "/sightings" },
    ],
    from: "Loaded from registers and surveys, or entered by people; each entry says how well it is known.",
  },
  {
    page: "/rings/*",
    title: "A ring",
    about:
      "The drives of one motion network in the order of the ring, so that you see what one change does to the others.",
    read: [
      "The place in the ring is the order of the light path, from 1.",
      "A drive of another generation in the ring may force all of them to change together.",
    ],
    next: [{ text: "See where it is installed", href: "/installed" }],
    from: "Loaded with the axis survey; the address is as set on the drive.",
  },
  {
    page: "/installed",
    title: "Installed",
    about: "Everything on record from site to unit, to open branch by branch.",
    read: [
      "A number behind a branch counts what lies below it.",
      "A retired machine or place counts nowhere from its day on.",
    ],
    next: [
      { text: "List all axes", href: "/axes" },
      { text: "See what is missing", href: "/footing" },
      { text: "Load a register", href: "/import" },
    ],
    from: "Loaded from registers of assets and axes, and changed by events that exchange a unit.",
  },
  {
    page: "/axes",
    title: "Axes",
    about: "All axes of your sites in one list, to filter by line, network, homing or what is not known.",
    read: ["An empty cell is not known.", "Ends of travel stand in the unit of the axis, as mm or deg."],
    next: [
      { text: "See what is missing by site", href: "/footing" },
      { text: "Go from site to unit", href: "/installed" },
    ],
    from: "Loaded with the axis survey and changed on the page of each machine.",
  },
  {
    page: "/moved",
    title: "What moved",
    about: "Two snapshots compared: how the loss of each line changed, and through what.",
    read: [
      "The steps add up to the whole change: corrections, events, stock, dates, assumptions and the calendar.",
      "Orange with ▲ is worse, blue with ▼ is better.",
    ],
    next: [
      { text: "See who changed what", href: "/audit" },
      { text: "See the ranking of today", href: "/lines" },
    ],
    from: "Computed from what was frozen with the two snapshots, by one version of the computation.",
  },
];
