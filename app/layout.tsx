import "@fontsource-variable/source-sans-3/wght.css";
import "@fontsource-variable/source-sans-3/wght-italic.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { readTheme } from "@/app/_ui/theme/readTheme";
import { NONCE } from "@/lib/access/contentPolicy";

export const metadata: Metadata = {
  title: { default: "Ebbline", template: "%s · Ebbline" },
  description: "What is installed, how long it can still be had, and which line to retrofit first.",
};

export const viewport: Viewport = { width: "device-width", initialScale: 1 };

/** The server writes the chosen theme, so the first paint is already right. */
export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = await readTheme();
  return (
    <html lang="en-GB" data-theme={theme ?? undefined}>
      <head>
        {/* Parts that write a style of their own while the page is used take the nonce from here. */}
        <meta
          property="csp-nonce"
          nonce={(await headers()).get(NONCE) ?? undefined}
          suppressHydrationWarning
        />
      </head>
      <body>{children}</body>
    </html>
  );
}
