import { count } from "@/lib/view/number";

interface Letter {
  readonly link: string;
  readonly days: number;
  /** Who invites, or made the link. */
  readonly from: string;
}

/** The mail that invites somebody. */
export function invitationMail({ link, days, from }: Letter) {
  return mailOf("Your account of Ebbline", [
    `${from} invites you to Ebbline.`,
    `Open this link within ${count(days, "day")} to choose a password. It opens once:`,
    link,
    "If you do not expect this, leave it: without the link nothing happens.",
  ]);
}

/** The mail that lets somebody choose a new password. */
export function newPasswordMail({ link, days, from }: Letter) {
  return mailOf("A new password for Ebbline", [
    `${from} made a link by which you choose a new password for Ebbline.`,
    `Open it within ${count(days, "day")}. It opens once; until then your present password holds:`,
    link,
    "If you do not expect this, leave it and tell whoever runs Ebbline: somebody may be trying to get in.",
  ]);
}

function mailOf(subject: string, said: readonly string[]) {
  const html = said.map((text) => `<p>${text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`)}</p>`);
  return { subject, text: said.join("\n\n"), html: html.join("\n") };
}
