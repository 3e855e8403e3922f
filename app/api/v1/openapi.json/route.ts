import { openapi } from "@/lib/interface/openapi";

/** What the interface does, as an OpenAPI document; it holds no data. */
export async function GET(): Promise<Response> {
  return Response.json(openapi());
}
