import { count } from "@/lib/view/number";

interface Letter {
  readonly link: string;
  readonly days: number;
  /** Who invites. */
  readonly from: string;
}

/** The mail that invites somebody. */
export function invitationMail({ link, days, from }: Letter) {
  const said = [
    `${from} invites you to Ebbline.`,
    `Open this link within ${count(days, "day")} to choose a password. It opens once:`,
    link,
    "If you do not expect this, leave it: without the link nothing happens.",
  ];
  const html = said.map((text) => `<p>${text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`)}</p>`);
  return { subject: "Your account of Ebbline", text: said.join("\n\n"), html: html.join("\n") };
}
