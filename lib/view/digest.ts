import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { type DateAhead, dateKindName } from "@/lib/view/datesAhead";
import { count } from "@/lib/view/number";
import { baseWords, type ReviewFigures } from "@/lib/view/review";
import type { ReviewAction } from "@/lib/view/reviewRecord";
import { movedFigures, whyText } from "@/lib/view/reviewWords";
import { day, distance } from "@/lib/view/time";

/** What a week's mail tells somebody of one site. */
export interface DigestContent {
  readonly figures: ReviewFigures;
  /** The reader's own actions that should have been done. */
  readonly late: readonly ReviewAction[];
  /** Address people open the app by. */
  readonly address: string;
  /** Puts a text into the reader's words; without it they are English. */
  readonly say?: Say;
}

/** Puts an English text into the words of whoever reads it. */
export type Say = (text: string) => string;

export interface DigestMail {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}

interface Part {
  readonly title: string;
  readonly none: string;
  readonly lines: readonly string[];
}

const DAYS = 30;
const MOST = 12;

/** The week's mail as plain text and as simple HTML, both with the same words. */
export function digestMail(content: DigestContent): DigestMail {
  const { figures, address, say = (text) => text } = content;
  const { siteCode, siteName, asOf } = figures;
  const head = say(`Spares of ${siteCode} ${siteName}, as of ${day(asOf)}`);
  const link = `${address}/review?site=${encodeURIComponent(siteCode)}`;
  const parts = partsOf(content)
    .map(linesOf)
    .map(({ title, lines }) => ({ title: say(title), lines: lines.map(say) }));
  const foot = say(
    "Estimates from sparse records, given without guarantee. You asked for this mail on your account page; end it there.",
  );
  return {
    subject: say(
      `Spares of ${siteCode}: ${count(figures.worse.length, "part")} got worse, ${count(content.late.length, "action")} of yours late`,
    ),
    text: [head, ...parts.map(asText), say(`The review: ${link}`), foot].join("\n\n"),
    html: [
      `<h1 style="font-size:1.2em">${escapeHtml(head)}</h1>`,
      ...parts.map(asHtml),
      `<p><a href="${escapeHtml(link)}">${escapeHtml(say("Open the review"))}</a></p>`,
      `<p style="color:#555">${escapeHtml(foot)}</p>`,
    ].join("\n"),
  };
}

/** Dates of a figure that come, or came, within the days a mail looks ahead. */
export function datesSoon({ dates, asOf }: Pick<ReviewFigures, "dates" | "asOf">): DateAhead[] {
  return dates.filter(({ on }) => on <= addDays(asOf, DAYS));
}

function partsOf({ figures, late }: DigestContent): Part[] {
  const { base, worse, asOf } = figures;
  return [
    {
      title: `What got worse since ${day(base.asOf)} (${baseWords(base)})`,
      none: "Nothing passed the threshold.",
      lines: worse.map((part) => {
        const { noSpare, loss } = movedFigures(part);
        return `${part.number}: no-spare chance ${noSpare.before} → ${noSpare.after}, loss here ${loss.before} → ${loss.after} € a year. ${whyText(part)}`;
      }),
    },
    {
      title: `Orders and repairs that end within ${DAYS} days`,
      none: "None.",
      lines: datesSoon(figures).map(
        ({ kind, of, on }) => `${day(on)}, ${distance(on, asOf)}: ${dateKindName(kind)}, ${of}`,
      ),
    },
    {
      title: "Your late actions",
      none: "None.",
      lines: late.map((action) => `${action.text}, due ${dueText(action.dueOn, asOf)}`),
    },
  ];
}

const dueText = (dueOn: IsoDate, asOf: IsoDate) => `${day(dueOn)}, ${distance(dueOn, asOf)}`;

type Shown = Pick<Part, "title" | "lines">;

/** The first lines, and how many more there are. */
function linesOf({ title, lines, none }: Part): Shown {
  if (lines.length === 0) return { title, lines: [none] };
  const more = lines.length - MOST;
  return { title, lines: [...lines.slice(0, MOST), ...(more > 0 ? [`and ${more} more`] : [])] };
}

function asText({ title, lines }: Shown): string {
  return [title.toUpperCase(), ...lines.map((line) => `- ${line}`)].join("\n");
}

function asHtml({ title, lines }: Shown): string {
  const items = lines.map((line) => `<li>${escapeHtml(line)}</li>`);
  return `<h2 style="font-size:1em">${escapeHtml(title)}</h2>\n<ul>\n${items.join("\n")}\n</ul>`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text as it may stand in HTML. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"]/g, (mark) => ENTITIES[mark] ?? mark);
}
