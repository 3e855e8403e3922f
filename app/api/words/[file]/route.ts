import { LANGUAGES, locale } from "@/lib/kernel/locale";
import { catalogueOf } from "@/lib/words/catalogue";
import { catalogueScript } from "@/lib/words/catalogueScript";
import { OWN_WORDS, type OwnWords } from "@/lib/words/say";

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

/** The words of a language for the browser; its address names the very content, so it may be kept for ever. */
export async function GET(_: Request, { params }: Asked): Promise<Response> {
  const { file } = await params;
  if (file === OWN_WORDS) return ownWords();
  const script = LANGUAGES.map(catalogueScript).find(({ address }) => address.endsWith(`/${file}`));
  if (!script) return new Response("There is no such file.", { status: 404 });
  return new Response(script.text, {
    headers: {
      "Content-Type": "text/javascript; charset=utf-8",
      "Cache-Control": "public, max-age=31536000, immutable",
    },
  });
}

/** For a page that came without its head: how whoever asks reads, and the words. */
function ownWords(): Response {
  const own: OwnWords = { locale: locale(), catalogue: catalogueOf(locale().language) };
  return Response.json(own, { headers: { "Cache-Control": "private, no-store" } });
}
