import "server-only";
import type { DigestMail } from "@/lib/view/digest";

/** A mail ready to leave. */
export interface ReadyMail extends DigestMail {
  readonly id: string;
  readonly to: string;
  readonly attachments?: readonly MailFile[];
}

/** A file that goes with a mail. */
export interface MailFile {
  readonly filename: string;
  readonly content: Buffer;
  readonly contentType: string;
}

/** Sends a mail; the file it was written to, where no mail server is set. */
export type Deliver = (mail: ReadyMail) => Promise<{ readonly file: string | null }>;
