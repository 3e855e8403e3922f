import "@fontsource-variable/source-sans-3/wght.css";
import "@fontsource-variable/source-sans-3/wght-italic.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { readTheme } from "@/app/_ui/theme/readTheme";

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
      <body>{children}</body>
    </html>
  );
}
