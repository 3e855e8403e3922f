import { randomStream } from "@/lib/kernel/random";
import { live } from "@/lib/launch/live";
import { brokenLaws, waitingIn } from "@/test/faults/check";
import { readGrounds } from "@/test/faults/grounds";
import { type Installation, makeTools, openInstallation, VICTIMS } from "@/test/faults/installation";
import { countsOf, type Ledger, newLedger } from "@/test/faults/ledger";
import { runLoad } from "@/test/faults/load";
import type { Load } from "@/test/faults/loadParts";
import { type Round, writeLog } from "@/test/faults/roundsLog";
import { on } from "@/test/support/archives";
import { startReceiver } from "@/test/support/receiver";

/**
 * Kills the application, its second process or the database with kill -9 in the midst of a mixed load, round after
 * round, and holds the database to what was acknowledged.
 *
 * Called with the number of rounds and the seed: `npm run faults -- 50 1`.
 */

const READY_WITHIN_SECONDS = 10;
const QUEUE_WITHIN_MS = 180_000;
const [, , rounds = "50", seedText = "1"] = process.argv;
const seed = Number(seedText);
const chance = randomStream(seed, "fault rounds");
const say = (line: string) => process.stdout.write(`${line}\n`);
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function playRound(load: Omit<Load, "stopping">): Promise<Round> {
  const { installation, ledger } = load;
  const victim = chance.pick(VICTIMS);
  let stopping = false;
  const running = runLoad({ ...load, stopping: () => stopping });
  await Promise.race([pause(chance.between(1_500, 5_000)), running]);
  const amid = [...ledger.underWay.values()].sort();
  await installation.kill(victim);
  const ready = await installation.startAgain(victim);
  await pause(chance.between(300, 1_000));
  stopping = true;
  await running;
  const counts = countsOf(ledger);
  return { victim, amid, ready, counts, broken: await brokenLaws(installation.url, ledger) };
}

/** Waits until the queue has done all that was asked of it, what a killed process had begun too. */
async function untilQueueDone({ url }: Installation, ledger: Ledger): Promise<string[]> {
  const end = performance.now() + QUEUE_WITHIN_MS;
  for (;;) {
    const waiting = await on(url, (client) => waitingIn(client, ledger));
    if (waiting.length === 0 || performance.now() > end) return waiting;
    await pause(500);
  }
}

await live(async (life) => {
  process.env.EBBLINE_WEBHOOK_ALLOW = "127.0.0.1";
  process.env.BETTER_AUTH_SECRET ??= "of-the-script-that-plays-the-faults-rounds";
  const receiver = await startReceiver();
  life.endWith(receiver.stop);
  const installation = await openInstallation();
  life.endWith(installation.stop);
  const tools = await makeTools(installation.url, receiver.address);
  const ledger = newLedger();
  let named = 0;
  const next = () => {
    named += 1;
    return named;
  };
  const load = { installation, tools, ledger, chance, next, grounds: await readGrounds(installation.url) };
  const played: Round[] = [];
  while (played.length < Number(rounds) && !life.stopping.aborted) {
    const round = await playRound(load);
    played.push(round);
    const { victim, ready, broken } = round;
    say(`${played.length}: ${victim}, ready after ${ready.toFixed(1)} s, ${broken.join("; ") || "all hold"}`);
    writeLog(seed, played, []);
  }
  const waiting = await untilQueueDone(installation, ledger);
  const told = receiver.received.length;
  const said =
    waiting.length === 0
      ? `At the end the queue had done all it was asked: ${ledger.reports.size} reports made once each, ${told} messages of changes received.`
      : `At the end the queue had not done: ${waiting.slice(0, 5).join(", ")} (${waiting.length}).`;
  writeLog(seed, played, [said]);
  say(said);
  const late = played.filter(({ ready }) => ready > READY_WITHIN_SECONDS).length;
  const bad = played.filter(({ broken }) => broken.length > 0).length;
  say(
    `${played.length} rounds: ${bad} broke a law, ${late} were ready later than ${READY_WITHIN_SECONDS} s.`,
  );
  return bad + late + waiting.length === 0 ? 0 : 1;
}, 1);
