import type { Metadata } from "next";
import { FirstAdminForm } from "@/app/first-admin/_components/FirstAdminForm";
import { inWords } from "@/lib/words/say";

export const generateMetadata = (): Metadata => ({
  title: inWords("First administrator"),
  referrer: "no-referrer",
});

interface Props {
  readonly searchParams: Promise<{ readonly token?: string | string[] }>;
}

/** Where the one-time link printed at the first start leads. */
export default async function FirstAdminPage({ searchParams }: Props) {
  const { token } = await searchParams;
  return (
    <main className="mx-auto grid min-h-dvh w-full max-w-[27rem] content-center gap-6 px-5 py-12">
      <header className="double-rule grid gap-2 pt-4">
        <p className="label">Ebbline</p>
        <h1 className="font-semibold text-[1.75rem] tracking-[-0.012em]">First administrator</h1>
        <p className="text-ink-2">
          This link works once. The account may do everything at every site, and gives other people theirs.
        </p>
      </header>
      <FirstAdminForm token={typeof token === "string" ? token : ""} />
    </main>
  );
}
