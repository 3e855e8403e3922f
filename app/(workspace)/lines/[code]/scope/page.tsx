import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { LineScopePage } from "@/app/(workspace)/lines/[code]/scope/_components/LineScopePage";
import { signedInActor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { readLineScope } from "@/lib/data/lineScope";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import { scopeView } from "@/lib/view/lineScope";
import { normsWithoutAmounts } from "@/lib/view/scopeNorm";
import { inWords } from "@/lib/words/say";

interface ScopePageProps {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{
    readonly asOf?: string;
    readonly target?: string;
    readonly window?: string;
  }>;
}

export async function generateMetadata({ params }: ScopePageProps): Promise<Metadata> {
  return { title: inWords(`Scope of ${decodeURIComponent((await params).code)}`) };
}

export default async function ScopePage({ params, searchParams }: ScopePageProps) {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const { asOf: asked, target, window } = await searchParams;
  const asOf = await readAsOf(actor, asked);
  const [found, norms] = await Promise.all([
    readLineScope(actor, { code: decodeURIComponent((await params).code), asOf }),
    readScopeNorms(actor),
  ]);
  if (found === null) notFound();
  const shown = found.showsAmounts ? norms : { ...norms, norms: normsWithoutAmounts(norms.norms) };
  const view = scopeView(found, { target, window }, shown.norms);
  return <LineScopePage {...{ found, norms: shown, view }} />;
}
