import { redirect } from "next/navigation";
import { FormMessage } from "@/app/_ui/FormMessage";
import { titled } from "@/app/_ui/titled";
import { CompanyButton } from "@/app/sign-in/_components/CompanyButton";
import { LanguageLinks } from "@/app/sign-in/_components/LanguageLinks";
import { SignInForm } from "@/app/sign-in/_components/SignInForm";
import { currentActor } from "@/lib/access/actor";
import { COMPANY } from "@/lib/access/auth";
import { ownPath } from "@/lib/access/ownPath";
import { companySignIn, isDemo } from "@/lib/env";
import { locale } from "@/lib/kernel/locale";

export const generateMetadata = titled("Sign in");

interface Props {
  readonly searchParams: Promise<{ readonly next?: string | string[]; readonly company?: string | string[] }>;
}

/** The door. Whoever is signed in already goes straight through. */
export default async function SignInPage({ searchParams }: Props) {
  const { next, company: said } = await searchParams;
  const target = ownPath(typeof next === "string" ? next : undefined);
  if (await currentActor()) redirect(target);
  const company = companySignIn();
  return (
    <main className="mx-auto grid min-h-dvh w-full max-w-[27rem] content-center gap-6 px-5 py-12">
      <header className="double-rule grid gap-2 pt-4">
        <p className="label">Ebbline</p>
        <h1 className="font-semibold text-[1.75rem] tracking-[-0.012em]">Sign in</h1>
        <p className="text-ink-2">
          What is installed, how long it can still be had, and which line to retrofit first.
        </p>
      </header>
      <FormMessage kind="problem">
        {said === "refused"
          ? "Your company account opens no account here. An administrator makes one, under the same e-mail."
          : null}
      </FormMessage>
      <SignInForm target={target} />
      {company ? <CompanyButton name={company.name} provider={COMPANY} target={target} /> : null}
      <LanguageLinks back={`/sign-in?next=${encodeURIComponent(target)}`} present={locale().language} />
      {isDemo() ? (
        <p className="border-rule border-t pt-3 text-ink-2 text-sm">
          This is the demonstration of an invented company. Its sign-ins are printed where Ebbline was
          started.
        </p>
      ) : null}
    </main>
  );
}
