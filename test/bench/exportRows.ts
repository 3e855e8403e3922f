import { database } from "@/lib/data/client";
import { openSavedList } from "@/lib/data/savedList";
import { FILE_FORMS } from "@/lib/reports/table/savedFile";
import { EXPORT_FORMATS } from "@/lib/view/exportTable";

/**
 * How fast all events of the database named by `DATABASE_URL` are saved in each format, and that memory stays flat:
 *
 * `node --max-old-space-size=160 --conditions=react-server --import tsx test/bench/exportRows.ts`
 */
const actor = {
  ...{ userId: "bench", name: "Bench", email: "bench@halvenor.example" },
  grants: [{ role: "admin" as const, siteId: null }],
};
const MEGABYTE = 1_000_000;

let peak = 0;
const look = setInterval(() => {
  peak = Math.max(peak, process.memoryUsage().rss);
}, 50);
const events = await database().event.count();
for (const format of EXPORT_FORMATS) {
  const table = openSavedList(actor, "events", { asOf: "2026-11-30", asked: new Map() });
  if (!table) throw new Error("there is no list of events");
  peak = 0;
  let bytes = 0;
  const from = performance.now();
  for await (const piece of FILE_FORMS[format].write(table)) bytes += piece.length;
  const seconds = (performance.now() - from) / 1000;
  process.stdout.write(
    `${format}: ${events} rows, ${(bytes / MEGABYTE).toFixed(0)} MB in ${seconds.toFixed(1)} s, at most ${(peak / MEGABYTE).toFixed(0)} MB resident\n`,
  );
}
clearInterval(look);
await database().$disconnect();
