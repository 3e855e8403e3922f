import { createServer, type Socket } from "node:net";

/** What a server was offered and took. */
class Inbox {
  readonly taken: string[] = [];
  offered = 0;
  refusals = 0;

  /** Answers the sender of a mail, as a server that is full does while it refuses (RFC 5321, code 452). */
  offer(): string {
    this.offered += 1;
    if (this.refusals === 0) return "250 fine";
    this.refusals -= 1;
    return "452 full for now";
  }
}

const END_OF_LINE = "\r\n";
const END_OF_MAIL = "\r\n.\r\n";

/** One talk with a sender: lines, then a mail, then lines again. */
class Talk {
  private heard = "";
  private inMail = false;

  constructor(
    private readonly inbox: Inbox,
    private readonly say: (line: string) => void,
  ) {}

  hear(piece: string): void {
    this.heard += piece;
    for (let unit = this.next(); unit !== null; unit = this.next()) this.say(this.answer(unit));
  }

  private next(): string | null {
    const mark = this.inMail ? END_OF_MAIL : END_OF_LINE;
    const end = this.heard.indexOf(mark);
    if (end < 0) return null;
    const unit = this.heard.slice(0, end);
    this.heard = this.heard.slice(end + mark.length);
    return unit;
  }

  private answer(unit: string): string {
    if (this.inMail) {
      this.inMail = false;
      this.inbox.taken.push(unit);
      return "250 taken";
    }
    const verb = unit.slice(0, 4).toUpperCase();
    this.inMail = verb === "DATA";
    if (verb === "MAIL") return this.inbox.offer();
    return { DATA: "354 go on", QUIT: "221 bye" }[verb] ?? "250 fine";
  }
}

/** A mail server that speaks as much SMTP (RFC 5321) as a sender without TLS needs. */
export async function mailServer() {
  const inbox = new Inbox();
  const server = createServer((socket: Socket) => {
    const talk = new Talk(inbox, (line) => socket.write(`${line}${END_OF_LINE}`));
    socket.setEncoding("utf8");
    socket.on("error", () => socket.destroy());
    socket.on("data", (piece: string) => talk.hear(piece));
    socket.write(`220 test${END_OF_LINE}`);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  const port = typeof address === "object" && address ? address.port : 0;
  const close = () => new Promise<void>((resolve) => server.close(() => resolve()));
  return { url: `smtp://127.0.0.1:${port}`, inbox, close };
}
