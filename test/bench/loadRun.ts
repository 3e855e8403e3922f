import { Agent, request } from "node:http";
import { promisify } from "node:util";
import { gunzip } from "node:zlib";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { Kind, Sent } from "@/test/bench/loadKinds";

export interface RunTerms {
  readonly address: string;
  readonly cookies: readonly string[];
  readonly kinds: readonly Kind[];
  readonly seconds: number;
  /** Mean time a person looks at an answer before the next request, s; each is between half and one and a half of it. */
  readonly thinkSeconds: number;
}

export interface Timing {
  readonly kind: string;
  /** From sending to the last byte, ms. */
  readonly ms: number;
  /** As they went over the wire, compressed. */
  readonly bytes: number;
  /** Why it is no answer; null is right. */
  readonly error: string | null;
}

const unzip = promisify(gunzip);
const PATIENCE_MS = 30_000;

/**
 * A closed load: each person waits for the answer, looks at it, then asks for the next thing; so they never pile up
 * further than one request each. Who they are and what they ask follows from the seed.
 */
export async function runLoad(terms: RunTerms): Promise<readonly Timing[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: Number.POSITIVE_INFINITY });
  const end = performance.now() + terms.seconds * 1000;
  const timings: Timing[] = [];
  const live = async (cookie: string, number: number) => {
    const random = randomStream(1, `person ${number}`);
    // Not all at once: each begins somewhere in the first pause.
    await pause(random.between(0, terms.thinkSeconds), end);
    while (performance.now() < end) {
      const kind = pickKind(terms.kinds, random);
      timings.push({ kind: kind.name, ...(await send(kind.next(random), { ...terms, agent, cookie })) });
      await pause(terms.thinkSeconds * random.between(0.5, 1.5), end);
    }
  };
  await Promise.all(terms.cookies.map(live));
  agent.destroy();
  return timings;
}

function pickKind(kinds: readonly Kind[], random: RandomStream): Kind {
  let left = random.next() * kinds.reduce((sum, { share }) => sum + share, 0);
  const found = kinds.find(({ share }) => {
    left -= share;
    return left < 0;
  });
  return found ?? (kinds.at(-1) as Kind);
}

function pause(seconds: number, end: number): Promise<void> {
  const ms = Math.min(seconds * 1000, end - performance.now());
  return new Promise((resolve) => setTimeout(resolve, Math.max(0, ms)));
}

interface By {
  readonly address: string;
  readonly agent: Agent;
  readonly cookie: string;
}

async function send(sent: Sent, { address, agent, cookie }: By): Promise<Omit<Timing, "kind">> {
  const from = performance.now();
  try {
    const { status, bytes, zipped } = await new Promise<Answer>((resolve, reject) => {
      const asked = request(
        new URL(sent.path, address),
        {
          ...{ agent, method: sent.method ?? "GET", timeout: PATIENCE_MS },
          headers: { Cookie: cookie, "Accept-Encoding": "gzip", ...sent.headers },
        },
        (answer) => {
          const pieces: Buffer[] = [];
          answer.on("data", (piece: Buffer) => pieces.push(piece));
          answer.on("error", reject);
          answer.on("end", () =>
            resolve({
              status: answer.statusCode ?? 0,
              bytes: Buffer.concat(pieces),
              zipped: answer.headers["content-encoding"] === "gzip",
            }),
          );
        },
      );
      asked.on("timeout", () => asked.destroy(new Error(`no answer in ${PATIENCE_MS / 1000} s`)));
      asked.on("error", reject);
      asked.end(sent.body);
    });
    const ms = performance.now() - from;
    const text = (zipped ? await unzip(bytes) : bytes).toString();
    const isRight = status === 200 && (sent.isRight?.(text) ?? true);
    return { ms, bytes: bytes.length, error: isRight ? null : `${status}: ${text.slice(0, 80)}` };
  } catch (error) {
    return { ms: performance.now() - from, bytes: 0, error: String(error) };
  }
}

interface Answer {
  readonly status: number;
  readonly bytes: Buffer;
  readonly zipped: boolean;
}
