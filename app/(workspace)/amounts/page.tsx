import type { Metadata } from "next";
import { LinkButton } from "@/app/_ui/LinkButton";
import { PageHeader } from "@/app/_ui/PageHeader";
import { signedInActor } from "@/lib/access/actor";

export const metadata: Metadata = { title: "Amounts are not shown" };

/** Where somebody comes who opens a page about money and sees no amounts at any site. */
export default async function AmountsPage() {
  await signedInActor({ amounts: "hidden", to: "contractors" });
  return (
    <PageHeader
      title="Amounts are not shown to you"
      lead="That page is about money, and your roles leave amounts out. Risk, stock and dates are all there. An administrator changes it under People."
      actions={
        <>
          <LinkButton href="/lines">Lines</LinkButton>
          <LinkButton href="/parts">Parts</LinkButton>
          <LinkButton href="/dates">Dates ahead</LinkButton>
        </>
      }
    />
  );
}
