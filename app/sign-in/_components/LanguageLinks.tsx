import type { Language } from "@/lib/kernel/locale";

interface LanguageLinksProps {
  /** Path to come back to. */
  readonly back: string;
  readonly present: Language;
}

/** Each language by its own name, so that nobody has to read another one first. */
const NAMES = [
  { language: "en", lang: "en-GB", name: "English" },
  { language: "de", lang: "de", name: "Deutsch" },
] as const;

/** Chooses the language of this device before anybody has signed in. */
export function LanguageLinks({ back, present }: LanguageLinksProps) {
  return (
    <nav aria-label="Language" className="flex gap-4 text-sm">
      {NAMES.map(({ language, lang, name }) => (
        <a
          key={language}
          href={`/api/reading?language=${language}&next=${encodeURIComponent(back)}`}
          lang={lang}
          translate="no"
          className="link"
          aria-current={language === present ? "true" : undefined}
        >
          {name}
        </a>
      ))}
    </nav>
  );
}
