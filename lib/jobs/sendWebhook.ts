import { type ClientRequest, type IncomingMessage, request as plain } from "node:http";
import { request as secure } from "node:https";
import { isIP, type LookupFunction } from "node:net";
import type { Answered, Outgoing } from "@/lib/data/interface/sendWaiting";
import { webhookAllow } from "@/lib/env";
import { reachOf, readAllowed } from "@/lib/jobs/addressGuard";

const PATIENCE_MS = 10_000;
const MOST_ANSWER = 300;

/**
 * Posts one message and gives what came back: never follows a redirect, never waits longer than ten seconds, reads no
 * more of the answer than is shown, and speaks only to an address it has looked at.
 */
export async function sendWebhook({ address, headers, body }: Outgoing): Promise<Answered> {
  const url = new URL(address);
  const reach = await reachOf(url, readAllowed(webhookAllow()));
  if ("refused" in reach) return { status: null, answer: reach.refused };
  const [ip = ""] = reach.ips;
  const fixed: LookupFunction = (_host, options, done) => {
    const family = isIP(ip);
    if (options.all) done(null, [{ address: ip, family }]);
    else done(null, ip, family);
  };
  const post = url.protocol === "https:" ? secure : plain;
  const signal = AbortSignal.timeout(PATIENCE_MS);
  return new Promise((resolve) => {
    const sent = post(url, {
      ...{ method: "POST", lookup: fixed, agent: false, signal },
      headers: { ...headers, "Content-Length": Buffer.byteLength(body) },
    });
    sent.once("error", (error) => resolve({ status: null, answer: whyNot(error, signal) }));
    sent.once("response", (answer) => readStart(sent, answer, resolve));
    sent.end(body);
  });
}

function whyNot(error: Error, signal: AbortSignal): string {
  return signal.aborted ? `No answer within ${PATIENCE_MS / 1000} seconds.` : error.message;
}

/** The status and the beginning of an answer; the rest is not read. */
function readStart(sent: ClientRequest, answer: IncomingMessage, tell: (answered: Answered) => void): void {
  let text = "";
  const end = () => {
    tell({ status: answer.statusCode ?? null, answer: text.slice(0, MOST_ANSWER) });
    sent.destroy();
  };
  answer.setEncoding("utf8");
  answer.on("data", (piece: string) => {
    text += piece;
    if (text.length >= MOST_ANSWER) end();
  });
  answer.once("end", end);
  answer.once("error", end);
}
