import "@fontsource-variable/source-sans-3/wght.css";
import "@fontsource-variable/source-sans-3/wght-italic.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { readTheme } from "@/app/_ui/theme/readTheme";
import { NONCE } from "@/lib/access/contentPolicy";
import { locale } from "@/lib/kernel/locale";
import { catalogueScript } from "@/lib/words/catalogueScript";
import { inWords } from "@/lib/words/say";

export const generateMetadata = (): Metadata => ({
  title: { default: "Ebbline", template: "%s · Ebbline" },
  description: inWords("What is installed, how long it can still be had, and which line to retrofit first."),
});

export const viewport: Viewport = { width: "device-width", initialScale: 1 };

/** What a page says it is written in. */
const LANG = { en: "en-GB", de: "de" } as const;

/** The server writes the chosen theme and language, so the first paint is already right. */
export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = await readTheme();
  const nonce = (await headers()).get(NONCE) ?? undefined;
  const { language, numbers } = locale();
  return (
    <html lang={LANG[language]} data-numbers={numbers} data-theme={theme ?? undefined}>
      <head>
        {/* Parts that write a style of their own while the page is used take the nonce from here. */}
        <meta property="csp-nonce" nonce={nonce} suppressHydrationWarning />
        {/* Waited for, so that the words are there before the first part of the page is made in the browser. */}
        {language === "en" ? null : (
          <script src={catalogueScript(language).address} nonce={nonce} suppressHydrationWarning />
        )}
      </head>
      <body>{children}</body>
    </html>
  );
}
