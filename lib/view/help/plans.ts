import type { HelpText } from "@/lib/view/help/helpText";

export const planHelp: readonly HelpText[] = [
  {
    page: "/plans",
    title: "Plans",
    about:
      "What to retrofit, when and with which money: plans over years, and rankings cut by one year's budget.",
    read: [
      "A draft can be changed; put forward, it waits for a decision; funded, projects can start.",
      "A plan put forward keeps everything it showed.",
    ],
    next: [
      { text: "Cut the ranking by a budget", href: "/plans/new" },
      { text: "Compare plans", href: "/plans/compare" },
      { text: "Check money, hands and shutdowns", href: "/plans/inputs" },
    ],
    from: "Kept by planners; the figures are those of the ranking on the day of the plan.",
  },
  {
    page: "/plans/new",
    title: "Cut by a budget",
    about: "Type what a year has to spend and see which lines it funds, and which fall just below.",
    read: [
      "The funding line stands where the money ends.",
      "A line pinned in is funded first; one kept out never is.",
      "Lines with a safety or legal date are marked: money does not outweigh them.",
    ],
    next: [{ text: "See the plans kept", href: "/plans" }],
    from: "The ranking of lines, and the estimated cost of each retrofit unless you type another.",
  },
  {
    page: "/plans/compare",
    title: "Compare plans",
    about: "Two to five plans side by side: money, worth, what each does first and what each leaves.",
    read: [
      "Every plan is worked out on the whole group in the same way.",
      "The ranking spent on the money of the first plan stands beside them as a baseline.",
    ],
    next: [{ text: "See all plans", href: "/plans" }],
    from: "Computed anew for every plan on one state of the records.",
  },
  {
    page: "/plans/inputs",
    title: "Planning inputs",
    about: "Money, engineers, crews and shutdowns that plans are made with, by site and year.",
    read: [
      "A figure has an owner and a source; without one it is assumed.",
      "A shutdown is a time when work on a line is possible.",
    ],
    next: [{ text: "Make a plan", href: "/plans" }],
    from: "Stated by people of the site; nothing here is estimated.",
  },
  {
    page: "/plans/*",
    title: "A plan",
    about: "The board of a plan over years, or the lines of a cut, with what it costs and what it is worth.",
    read: [
      "Drag a line to another shutdown, or use the keys, and see at once what that does to the whole group.",
      "A pin holds a line where a person put it; the search leaves it there and says what that costs.",
      "A warning names the limit that is broken: money, hands, hours, lead time or a duty.",
    ],
    next: [
      { text: "See all plans", href: "/plans" },
      { text: "Check the inputs", href: "/plans/inputs" },
    ],
    from: "Computed from the scope of every line, the planning inputs, and the loss with and without each retrofit.",
  },
  {
    page: "/plans/*/choices",
    title: "Choices of a plan",
    about:
      "For every line the ways to treat it, from doing nothing to a full retrofit, and which the plan takes.",
    read: [
      "Each way has money, hours and what it leaves of the loss.",
      "Doing nothing is a choice; who takes it answers for it.",
    ],
    next: [{ text: "See all plans", href: "/plans" }],
    from: "The scope of each line; costs are low, typical and high.",
  },
  {
    page: "/plans/*/money",
    title: "Money of a plan",
    about: "What the plan spends by year and quarter, against what there is.",
    read: [
      "More spent than a year has is said in words.",
      "Money that nobody stated for a year is not known; it is not zero.",
    ],
    next: [{ text: "Check the money of the years", href: "/plans/inputs" }],
    from: "Typical costs of what is placed; budgets from the planning inputs.",
  },
  {
    page: "/plans/*/request",
    title: "Capital request",
    about: "The plan as a request for money, to print or to send as a workbook.",
    read: [
      "Worth and span are estimates from sparse records.",
      "What the plan leaves undone is named with what it may cost.",
    ],
    next: [{ text: "See all plans", href: "/plans" }],
    from: "The plan as it was put forward; until then as it stands now.",
  },
  {
    page: "/plans/*/solve",
    title: "Search for a plan",
    about:
      "Let the computer look for the plan of most worth within money, hands, hours, lead times and duties.",
    read: [
      "Proven means that no plan can be better by more than the gap that is given.",
      "Stopping keeps the best plan found so far.",
      "What a person pinned stays where it is.",
    ],
    next: [{ text: "See all plans", href: "/plans" }],
    from: "Solved on the inputs frozen when the search began.",
  },
];
