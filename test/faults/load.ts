import { addDays, type IsoDate, isoDate } from "@/lib/kernel/isoDate";
import { isoWeekText } from "@/lib/kernel/isoWeek";
import { slotName } from "@/lib/view/reportSlot";
import { sendUntilAnswered } from "@/test/faults/caller";
import { type Load, untilDone } from "@/test/faults/loadParts";
import { searchPlans } from "@/test/faults/searches";
import { on } from "@/test/support/archives";

export const ROWS_OF_FILE = 400;

/** Runs all parts of the load until it is to stop and each has the answer to what it asked last. */
export async function runLoad(load: Load): Promise<void> {
  await Promise.all([
    recordEvents(load),
    setStock(load),
    loadFiles(load),
    askReports(load),
    searchPlans(load),
  ]);
}

const address = ({ installation }: Load) => installation.application().address;

async function recordEvents(load: Load): Promise<void> {
  const { ledger, grounds, chance, tools } = load;
  while (!load.stopping()) {
    const text = `faults ${load.next()}`;
    ledger.underWay.set("event", "an event");
    const body = JSON.stringify({
      ...{
        positionId: chance.pick(grounds.positionIds),
        kind: "failure",
        unitOut: "scrap",
        text,
        sure: true,
      },
      happenedAt: `2026-11-${chance.integer(10, 28)}T06:${chance.integer(10, 59)}`,
    });
    const request = { method: "POST", path: "/events", key: tools.keys[0] ?? "", body } as const;
    const answer = await sendUntilAnswered(() => address(load), request);
    ledger.events.set((answer as { eventId: string }).eventId, text);
    ledger.underWay.delete("event");
  }
}

async function setStock(load: Load): Promise<void> {
  const { ledger, grounds, chance, tools } = load;
  while (!load.stopping()) {
    const { id, ...lot } = chance.pick(grounds.lots);
    const before = ledger.lots.get(id) ?? { quantity: lot.quantity, changes: 0 };
    const seen = { ...lot, quantity: before.quantity };
    const quantity = before.quantity === 3 ? 4 : 3;
    ledger.underWay.set("stock", "a change of stock");
    const body = JSON.stringify({ seen, wanted: { ...seen, quantity } });
    const request = { method: "PATCH", path: `/stock-lots/${id}`, key: tools.keys[1] ?? "", body } as const;
    await sendUntilAnswered(() => address(load), request);
    ledger.lots.set(id, { quantity, changes: before.changes + 1 });
    ledger.underWay.delete("stock");
  }
}

/** A register of events nobody recorded before; the references begin with its name. */
function eventsFile(name: string, place: string): string {
  const day = (i: number) => `2026-0${1 + (i % 9)}-${String(1 + (i % 28)).padStart(2, "0")}`;
  const rows = Array.from(
    { length: ROWS_OF_FILE },
    (_, i) => `${place};drive;failure;${day(i)};${name}-${i}`,
  );
  return `Site;Line;Machine;Item class;Kind;Date;Reference\n${rows.join("\n")}\n`;
}

async function loadFiles(load: Load): Promise<void> {
  const { ledger, grounds, chance, tools } = load;
  const send = (path: string, body: string, type?: string) =>
    sendUntilAnswered(() => address(load), {
      ...{ method: "POST", path, key: tools.keys[2] ?? "", body },
      ...(type ? { type } : {}),
    });
  while (!load.stopping()) {
    const name = `file${load.next()}`;
    ledger.underWay.set("import", "the reading of a file");
    const staged = await send(
      `/imports?register=events&fileName=${name}.csv`,
      eventsFile(name, chance.pick(grounds.machines)),
      "text/csv",
    );
    const { batchId } = staged as { batchId: string };
    ledger.underWay.set("import", "the loading of a file");
    await send(`/imports/${batchId}/load`, "{}");
    ledger.imports.set(batchId, name);
    ledger.underWay.delete("import");
  }
}

const LAST_SUNDAY = isoDate("2026-11-29");

/** Asks for reports of past weeks, one after the other, as the timetable does; the queue makes them. */
async function askReports(load: Load): Promise<void> {
  const { ledger, grounds, installation } = load;
  while (!load.stopping()) {
    const number = ledger.reports.size;
    const siteId = grounds.siteIds[number % grounds.siteIds.length] ?? "";
    const asOf: IsoDate = addDays(LAST_SUNDAY, -7 * Math.floor(number / grounds.siteIds.length));
    const slot = { kind: "weekly", siteId, period: isoWeekText(asOf), asOf } as const;
    const name = slotName(slot);
    ledger.underWay.set("report", "the asking for a report");
    await untilDone(() =>
      on(installation.url, (client) =>
        client.query(
          `SELECT graphile_worker.add_job('issueReport', $1::json, job_key := $2, max_attempts := 10)`,
          [JSON.stringify(slot), `report:${name}`],
        ),
      ),
    );
    ledger.reports.add(name);
    ledger.underWay.set("report", "the making of a report");
    await untilDone(async () => {
      if (load.stopping()) return;
      const made = await on(installation.url, (client) =>
        client.query(`SELECT FROM "ReportIssue" WHERE "slot" = $1`, [name]),
      );
      if (made.rowCount === 0) throw new Error("not yet");
    });
    ledger.underWay.delete("report");
  }
}
