import { titled } from "@/app/_ui/titled";
import { InvitedForm } from "@/app/invitation/_components/InvitedForm";
import { companySignIn } from "@/lib/env";

export const generateMetadata = titled("Your account");

interface Props {
  readonly searchParams: Promise<{ readonly token?: string | string[] }>;
}

/** Where an invitation's link leads. It says nothing of the link, so that guessing finds nothing out. */
export default async function InvitationPage({ searchParams }: Props) {
  const { token } = await searchParams;
  return (
    <main className="mx-auto grid min-h-dvh w-full max-w-[27rem] content-center gap-6 px-5 py-12">
      <header className="double-rule grid gap-2 pt-4">
        <p className="label">Ebbline</p>
        <h1 className="font-semibold text-[1.75rem] tracking-[-0.012em]">Your account</h1>
        <p className="text-ink-2">Choose a password; this link works once.</p>
      </header>
      <InvitedForm token={typeof token === "string" ? token : ""} company={companySignIn()?.name ?? null} />
    </main>
  );
}
