import type { DigestMail, Say } from "@/lib/view/digest";
import { escapeHtml } from "@/lib/view/digest";
import { moneySpan } from "@/lib/view/format";
import type { ReportDocument } from "@/lib/view/reportDocument";

interface MailContent {
  readonly document: ReportDocument;
  readonly issueId: string;
  /** Address people open the app by. */
  readonly address: string;
  /** Puts a text into the reader's words; without it they are English. */
  readonly say?: Say;
}

const FOOT =
  "Estimates from sparse records, given without guarantee; never a reason to run an unsafe machine. You asked for this mail on your account page; end it there.";

/** The mail a report goes with: its headline, the decisions it asks for, where it is kept. */
export function reportMail({ document, issueId, address, say = (text) => text }: MailContent): DigestMail {
  const { title, scope, headline, pages } = document;
  const loss = headline?.loss ? `Expected stop loss a year: ${moneySpan(headline.loss)}.` : "";
  const lead = [loss, ...(headline?.sentences ?? [])].filter((one) => one !== "").map(say);
  const decisions = pages.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "list" ? block.items.map(({ text }) => say(text)) : [])),
  );
  const link = `${address}/report/archive/${issueId}`;
  const head = say(`${title}, ${scope}`);
  const [asked, foot] = [say("Decisions asked for"), say(FOOT)];
  const list = decisions.length === 0 ? [] : [`${asked}:`, ...decisions.map((one) => `- ${one}`)];
  return {
    subject: head,
    text: [head, ...lead, list.join("\n"), say(`The report, in each form: ${link}`), foot]
      .filter((part) => part !== "")
      .join("\n\n"),
    html: [
      `<h1 style="font-size:1.2em">${escapeHtml(head)}</h1>`,
      ...lead.map((one) => `<p>${escapeHtml(one)}</p>`),
      ...(decisions.length === 0
        ? []
        : [
            `<h2 style="font-size:1em">${escapeHtml(asked)}</h2>\n<ul>\n${decisions.map((one) => `<li>${escapeHtml(one)}</li>`).join("\n")}\n</ul>`,
          ]),
      `<p><a href="${escapeHtml(link)}">${escapeHtml(say("Open the report in each form"))}</a></p>`,
      `<p style="color:#555">${escapeHtml(foot)}</p>`,
    ].join("\n"),
  };
}
