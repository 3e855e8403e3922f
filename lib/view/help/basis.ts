import type { HelpText } from "@/lib/view/help/helpText";

export const basisHelp: readonly HelpText[] = [
  {
    page: "/report",
    title: "Report",
    about:
      "The month on two pages for a site and on one for the group, to give out as PDF, slides or workbook.",
    read: [
      "A report given out never changes; figures of today may differ.",
      "The span stands beside every estimate.",
    ],
    next: [
      { text: "See the reports given out", href: "/report/archive" },
      { text: "Ask for it by mail", href: "/account" },
    ],
    from: "The same figures as the pages of lines, dates, projects and spares.",
  },
  {
    page: "/report/archive",
    title: "Reports given out",
    about: "Every report as it was given out, with its files.",
    read: ["Each names its day, its data version and the assumptions it was made with."],
    next: [{ text: "Make the report of this month", href: "/report" }],
    from: "Kept on the day it was given out; the database refuses to change it.",
  },
  {
    page: "/report/archive/*",
    title: "A report as it was given out",
    about: "One report exactly as people got it.",
    read: ["The files are the very bytes that were given out."],
    next: [{ text: "See all reports", href: "/report/archive" }],
    from: "Frozen; nothing here is computed again.",
  },
  {
    page: "/rules",
    title: "Rules",
    about: "What a new drive needs of controller, memory, axes, cards and motors, as data you can edit.",
    read: [
      "A verdict on a line names the rule and the version it was made by.",
      "Edit a rule and see which lines change before it holds.",
    ],
    next: [{ text: "See the lines", href: "/lines" }],
    from: "Stated by people with a source; a rule without one says so.",
  },
  {
    page: "/assumptions",
    title: "Assumptions",
    about: "Every value nobody measured, in a careful, a likely, a bold and your own set.",
    read: [
      "Each value has a basis, an owner and a day.",
      "Choosing another set changes every figure at once, and stands in the changes.",
    ],
    next: [
      { text: "See what moved", href: "/moved" },
      { text: "See what rests on guesses", href: "/footing" },
    ],
    from: "The product's sets with their reasons, and what your company stated.",
  },
  {
    page: "/start",
    title: "First steps",
    about: "What to do in an empty installation until it shows a first ranking of lines.",
    read: [
      "A tick in a full circle is done; the step with the grey ground is the next one.",
      "You can put the page away; it stays at its address.",
    ],
    next: [
      { text: "Load a register", href: "/import" },
      { text: "Give people a role", href: "/people" },
      { text: "See the lines", href: "/lines" },
    ],
    from: "Counted on what is on record at your sites.",
  },
  {
    page: "/people",
    title: "People",
    about: "Who may do what, at which sites, and who sees amounts of money.",
    read: [
      "A role holds at one site or at all of them.",
      "A contractor sees one project and nothing else.",
      "A closed account stays in the records and can be opened again.",
      "Who lost the password or the second factor gets a one-time link here.",
    ],
    next: [{ text: "See who changed what", href: "/audit" }],
    from: "Given by administrators.",
  },
  {
    page: "/account",
    title: "Your account",
    about: "Your password, second factor, open sessions, language, calendar address and mails.",
    read: [
      "A session you do not know can be ended here, with your password.",
      "The calendar address is secret: whoever has it sees the days.",
    ],
    next: [{ text: "Use Ebbline from other systems", href: "/interface" }],
    from: "What you set yourself.",
  },
  {
    page: "/amounts",
    title: "Amounts are not shown",
    about: "The page you asked for is about money, and your role does not show it.",
    read: ["An administrator can show amounts to you, site by site."],
    next: [
      { text: "See what is installed", href: "/installed" },
      { text: "See your account", href: "/account" },
    ],
    from: "Your roles as an administrator gave them.",
  },
  {
    page: "/audit",
    title: "Changes",
    about: "Who changed what, when and why, with what stood there before and after.",
    read: [
      "You see the changes at your sites; what belongs to no site is shown to whoever reads all of them.",
      "Why is what the person wrote; no reason given means that they wrote none.",
      "Values are left out where your role shows no amounts.",
      "Files that were loaded stand as one change; their rows are under Import.",
    ],
    next: [
      { text: "See what the changes did to the loss", href: "/moved" },
      { text: "Save them as a file", href: "/export" },
    ],
    from: "Written in the same step as each change; nobody can edit or remove it.",
  },
  {
    page: "/export",
    title: "Save as files",
    about: "Every list as CSV, XLSX or JSON, and the whole installation as one archive.",
    read: [
      "Files hold what your role shows you.",
      "Under a date looked back to, they hold what was known then.",
    ],
    next: [{ text: "Let other systems read", href: "/interface" }],
    from: "The records themselves, read while the file is made.",
  },
  {
    page: "/interface",
    title: "Interface",
    about: "Access keys for other systems, and who is told of changes.",
    read: [
      "A key can do no more than you can, and only at the sites you give it.",
      "The key is shown once; a lost one is revoked and made anew.",
    ],
    next: [{ text: "See every call", href: "/interface/reference" }],
    from: "Keys and webhooks people made.",
  },
  {
    page: "/interface/reference",
    title: "Calls of the interface",
    about: "Each call other systems may make, with what it takes and an example.",
    read: ["The same list stands as an OpenAPI document for programs."],
    next: [{ text: "Make an access key", href: "/interface" }],
    from: "Made from the same list the server answers by.",
  },
  {
    page: "/interface/webhooks/*",
    title: "A webhook",
    about: "The messages sent to one address, those that wait and those that failed.",
    read: [
      "A failed message is tried again after a pause; after the last try the webhook is taken out of use with a note.",
      "The signature proves that a message is from here.",
    ],
    next: [{ text: "See keys and webhooks", href: "/interface" }],
    from: "Written with each attempt.",
  },
];
