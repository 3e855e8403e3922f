import { currentActor } from "@/lib/access/actor";
import { ownPath } from "@/lib/access/ownPath";
import { readReading } from "@/lib/data/reading";
import { authUrl } from "@/lib/env";
import { languageOf, locale } from "@/lib/kernel/locale";
import { cookieOf, READING_COOKIE, readerOf, wishOf } from "@/lib/words/wish";

const ONE_YEAR_SECONDS = 31_536_000;

const acceptedBy = (request: Request) => request.headers.get("accept-language") ?? undefined;

/** Keeps on the device how it reads: what the person chose, else the language asked for; then leads back. */
export async function GET(request: Request): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const actor = await currentActor();
  const asked = { language: languageOf(searchParams.get("language")), numbers: null };
  const own = searchParams.has("device") ? wishOf({ "accept-language": acceptedBy(request) }) : locale();
  const device = readerOf(asked, own);
  const reader = actor ? readerOf(await readReading(actor), device) : device;
  const secure = authUrl().startsWith("https:") ? "; Secure" : "";
  const cookie = `${READING_COOKIE}=${cookieOf(reader)}; Path=/; Max-Age=${ONE_YEAR_SECONDS}; SameSite=Lax; HttpOnly${secure}`;
  const back = ownPath(searchParams.get("next") ?? undefined);
  return new Response(null, { status: 303, headers: { Location: back, "Set-Cookie": cookie } });
}
