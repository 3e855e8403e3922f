import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { AppShell } from "@/app/_ui/AppShell";
import { LinkButton } from "@/app/_ui/LinkButton";
import { SavePage } from "@/app/_ui/SavePage";
import { readTheme } from "@/app/_ui/theme/readTheme";
import { SignOut } from "@/app/(workspace)/_components/SignOut";
import { type Actor, signedInActor } from "@/lib/access/actor";
import { PATH } from "@/lib/access/contentPolicy";
import { maySomewhere, scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { readKnownFrom } from "@/lib/data/lookBack";
import { readZone } from "@/lib/data/readerZone";
import { readReading } from "@/lib/data/reading";
import { savableLists } from "@/lib/data/savedList";
import { readSiteNames, type SiteName } from "@/lib/data/siteNames";
import { locale } from "@/lib/kernel/locale";
import { describeRoles } from "@/lib/view/role";
import { cookieOf, readerOf } from "@/lib/words/wish";

const AREAS = [
  { label: "Today", href: "/home" },
  { label: "Lines", href: "/lines" },
  { label: "Installed", href: "/installed" },
  {
    ...{ label: "Spares", href: "/spares" },
    covers: ["/review", "/counts", "/care", "/repairs", "/levels", "/cover", "/pool", "/spend"],
  },
  { label: "Parts", href: "/parts" },
  { label: "Notices", href: "/notices" },
  { label: "Events", href: "/events" },
  { label: "Dates ahead", href: "/dates" },
  { label: "Plans", href: "/plans" },
  { label: "Projects", href: "/projects" },
  { label: "Report", href: "/report" },
  { label: "What moved", href: "/moved" },
  { label: "Data footing", href: "/footing", covers: ["/sightings"] },
  { label: "Rules", href: "/rules" },
  { label: "Assumptions", href: "/assumptions" },
] as const;

/** What somebody sees who is of no site: a contractor's project. */
const OUTSIDE = [{ label: "Projects", href: "/projects" }];

/** The frame of every page for the signed-in: areas, search, as-of day, account. */
export default async function WorkspaceLayout({ children }: { readonly children: ReactNode }) {
  const actor = await signedInActor({ to: "everybody" });
  await readAsWished(actor);
  const [siteNames, today, knownFrom, zone, theme] = await Promise.all([
    readSiteNames(actor),
    readAsOf(actor, undefined),
    readKnownFrom(actor),
    readZone(actor),
    readTheme(),
  ]);
  const items = !maySomewhere(actor.grants, "read")
    ? OUTSIDE
    : [
        ...AREAS,
        ...(maySomewhere(actor.grants, "register:import") ? [{ label: "Import", href: "/import" }] : []),
        { label: "Changes", href: "/audit" },
        { label: "Save as files", href: "/export" },
        ...(scopeOf(actor.grants, "people:write") === "all" ? [{ label: "People", href: "/people" }] : []),
      ];
  const role = describeRoles(actor.grants, new Map(siteNames.map((site) => [site.id, site.code])));
  return (
    <AppShell
      items={items}
      scope={scopeInWords(siteNames, scopeOf(actor.grants, "read") === "all")}
      today={today}
      knownFrom={knownFrom}
      zone={zone}
      user={{ name: actor.name, role }}
      theme={theme}
      foot={<SavePage lists={savableLists(actor).map(({ about: _, ...list }) => list)} />}
      account={
        <>
          <LinkButton href="/account">Your account</LinkButton>
          <LinkButton href="/interface">Interface</LinkButton>
          <SignOut />
        </>
      }
    >
      {children}
    </AppShell>
  );
}

/** Whoever chose another language than this device shows is led through where it is kept, and back. */
async function readAsWished(actor: Actor): Promise<void> {
  const wished = readerOf(await readReading(actor), locale());
  if (cookieOf(wished) === cookieOf(locale())) return;
  redirect(`/api/reading?next=${encodeURIComponent((await headers()).get(PATH) ?? "/")}`);
}

function scopeInWords(siteNames: readonly SiteName[], all: boolean): string {
  const [only] = siteNames;
  if (all) return siteNames.length === 0 ? "No site yet" : `All ${siteNames.length} sites`;
  if (siteNames.length === 1 && only) return `${only.code} ${only.name}`;
  return siteNames.map((site) => site.code).join(", ");
}
