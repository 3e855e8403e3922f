import type { HelpText } from "@/lib/view/help/helpText";

const LIST = { text: "See all projects", href: "/projects" } as const;

export const projectHelp: readonly HelpText[] = [
  {
    page: "/projects",
    title: "Projects",
    about: "Every retrofit project with its money, its progress and its next gate.",
    read: [
      "Earned is the budget of the work that is done; paid is what it has cost.",
      "A cost index below 1 means that the work costs more than planned.",
      "The forecast has three ways of reckoning; where they lie far apart, ask why.",
    ],
    next: [
      { text: "See shutdowns and hands", href: "/projects/calendar" },
      { text: "Start one from a funded plan", href: "/plans" },
    ],
    from: "Orders, payments, milestones and steps of axes as they were entered.",
  },
  {
    page: "/projects/calendar",
    title: "Shutdowns and projects",
    about:
      "The months ahead by site: which work lies in which shutdown, and where hands are asked for twice.",
    read: [
      "Work outside every shutdown is said in words.",
      "More crews or engineers asked for than there are is said too.",
    ],
    next: [LIST, { text: "Check shutdowns and hands", href: "/plans/inputs" }],
    from: "Schedules of the projects, shutdowns and hands from the planning inputs.",
  },
  {
    page: "/projects/*",
    title: "A project",
    about: "Where the project stands: money, progress, forecast, milestones, and what is late.",
    read: [
      "Earned value is the budget of what is done, never of what was tried.",
      "An overrun is told while most of the work still lies ahead.",
      "A milestone earned by axes counts axes that are done, not feelings.",
    ],
    next: [LIST, { text: "See the calendar", href: "/projects/calendar" }],
    from: "What people entered of this project; indices and forecasts are computed from it.",
  },
  {
    page: "/projects/*/money",
    title: "Money of a project",
    about: "Original budget, approved changes, orders, payments and what is still to order, by class.",
    read: [
      "The original budget never changes; what was added stands as a change with its reason.",
      "An amount in another currency keeps the rate of its day.",
      "Contingency left is what nobody has taken yet.",
    ],
    next: [LIST],
    from: "Orders and invoices entered or loaded from a file; nothing is estimated but what is still to order.",
  },
  {
    page: "/projects/*/schedule",
    title: "Schedule of a project",
    about: "Tasks and what they wait for, with the first plan, the plan in force and how it now looks.",
    read: [
      "A critical task moves the end when it moves.",
      "What you move is a draft on this device until you put it in force with a reason.",
      "A gate is passed by name and day, once nothing in it is open.",
    ],
    next: [LIST, { text: "See the calendar", href: "/projects/calendar" }],
    from: "Entered by planners; how it now looks is computed from what has really happened.",
  },
  {
    page: "/projects/*/axes",
    title: "Steps of the axes",
    about: "Which axes are surveyed, engineered, wired, powered, tuned, validated and accepted.",
    read: [
      "A step is done or not done; there is nothing between.",
      "The last two steps follow from the record of the axis.",
    ],
    next: [LIST],
    from: "Marked by people, with name and day.",
  },
  {
    page: "/projects/*/axes/*",
    title: "Record of an axis",
    about: "Values before removal, limits and values after, and why the axis cannot be accepted yet.",
    read: [
      "A value outside its limits is marked and named.",
      "Changes of stops, speeds or safety functions need a new validation by a competent person.",
    ],
    next: [LIST],
    from: "Measured and entered at the machine by the person named.",
  },
  {
    page: "/projects/*/cutover",
    title: "Cutover",
    about: "Who does what from which hour, what it needs, whom to call, and until when there is a way back.",
    read: [
      "The last hour of the way back is when the old system can still be put back in time.",
      "While nobody has tried the way back, it is not known that there is one.",
      "Lock out and prove dead before work, by the rules of your site.",
    ],
    next: [LIST],
    from: "Planned hours as entered; what is to be expected is reckoned from the times written down.",
  },
  {
    page: "/projects/*/points",
    title: "Open points and risks",
    about: "What is open, who does it until when, and what may still go wrong.",
    read: [
      "A point that stands in the way of acceptance is marked.",
      "Chance and effect are ranges; what they come to is a range too.",
    ],
    next: [LIST],
    from: "Entered by the people of the project.",
  },
  {
    page: "/projects/*/close",
    title: "Close-out",
    about: "Thirteen things that must be true before the project is closed, each with what is missing.",
    read: [
      "Each is worked out from the records; where it cannot be, a person states it by name.",
      "Closing books removed and fitted units in one step, and can be taken back for 30 days.",
    ],
    next: [LIST],
    from: "The records of the project, its axes, its money and its documents.",
  },
  {
    page: "/projects/*/benefit",
    title: "Benefit",
    about: "The year before against the year after: did the retrofit bring what was asked for?",
    read: [
      "Too early is said and not judged.",
      "Few events give a wide span; a difference inside it proves nothing.",
    ],
    next: [LIST],
    from: "Events and hours of the line in both years, by the same rules.",
  },
];
