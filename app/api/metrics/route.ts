import { mayReadMetrics } from "@/lib/access/metricsReader";
import { readStandings } from "@/lib/data/standing";
import { metricsText } from "@/lib/metrics/meters";

export const dynamic = "force-dynamic";

/** For a collector of metrics that says the token of the environment; for others there is nothing here. */
export async function GET(request: Request): Promise<Response> {
  if (!mayReadMetrics(request.headers.get("Authorization")))
    return new Response("Nothing here.", { status: 404 });
  return new Response(await metricsText(await readStandings()), {
    headers: { "Content-Type": "text/plain; version=0.0.4; charset=utf-8", "Cache-Control": "no-store" },
  });
}
