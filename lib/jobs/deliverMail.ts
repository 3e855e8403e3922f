import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createTransport } from "nodemailer";
import type { ReadyMail } from "@/lib/data/group/readyMail";
import { dataFolder, mailFrom, smtpUrl } from "@/lib/env";

const PATIENCE_MS = 20_000;

/** Sends a mail by the mail server that is set; without one writes it into the data folder, as it would have left. */
export async function deliverMail({
  id,
  attachments = [],
  ...mail
}: ReadyMail): Promise<{ readonly file: string | null }> {
  const from = mailFrom();
  // The same mail has the same number, so that one that was taken twice can be told.
  const whole = {
    ...{ from, ...mail, attachments: [...attachments] },
    messageId: `<${id}@${from.split("@").at(-1) ?? "localhost"}>`,
  };
  const url = smtpUrl();
  if (url === null) return { file: await writeMail(id, whole) };
  const transport = createTransport({
    url,
    connectionTimeout: PATIENCE_MS,
    greetingTimeout: PATIENCE_MS,
    socketTimeout: PATIENCE_MS,
  });
  try {
    await transport.sendMail(whole);
    return { file: null };
  } finally {
    transport.close();
  }
}

async function writeMail(id: string, mail: Parameters<ReturnType<typeof createTransport>["sendMail"]>[0]) {
  const { message } = await createTransport({ streamTransport: true, buffer: true }).sendMail(mail);
  const folder = join(dataFolder(), "mails");
  await mkdir(folder, { recursive: true });
  const file = join(folder, `${id}.eml`);
  await writeFile(file, message);
  return file;
}
