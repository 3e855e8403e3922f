import type { ReactNode } from "react";
import { SearchPalette } from "@/app/_ui/SearchPalette";
import { AsOfControl } from "@/app/_ui/shell/AsOfControl";
import { HelpButton } from "@/app/_ui/shell/HelpButton";
import { KnownBand } from "@/app/_ui/shell/KnownBand";
import { NavigationList } from "@/app/_ui/shell/NavigationList";
import type { NavigationItem } from "@/app/_ui/shell/navigation";
import { PhoneNavigation } from "@/app/_ui/shell/PhoneNavigation";
import { UserMenu } from "@/app/_ui/shell/UserMenu";
import { Wordmark } from "@/app/_ui/shell/Wordmark";
import type { Theme } from "@/app/_ui/theme/theme";
import type { KnownFrom } from "@/lib/view/knownAt";

interface AppShellProps {
  readonly items: readonly NavigationItem[];
  /** What the person sees of the group, e.g. `All 6 sites` or `VEL Velmark`. */
  readonly scope: string;
  /** Today in the business zone, `YYYY-MM-DD`; the as-of day when the address names none. */
  readonly today: string;
  /** From when on it is known how the records stood. */
  readonly knownFrom: KnownFrom | null;
  /** IANA zone whose clock the person is told instants by. */
  readonly zone: string;
  readonly user: { readonly name: string; readonly role: string };
  /** From `readTheme()`. */
  readonly theme: Theme | null;
  /** Sign out, shown in the account menu. */
  readonly account?: ReactNode;
  /** Stands under the page, whatever the page says. */
  readonly foot?: ReactNode;
  readonly children: ReactNode;
}

/** The frame of every signed-in page: rail (a menu on a phone), search, as-of day, account; then the page. */
export function AppShell(props: AppShellProps) {
  const { items, scope, today, knownFrom, zone, user, theme, account, foot, children } = props;
  return (
    <div className="lg:grid lg:grid-cols-[12.5rem_minmax(0,1fr)] print:block">
      <a
        href="#content"
        className="button no-print -translate-y-20 fixed top-2 left-2 z-50 focus:translate-y-0"
      >
        Skip to the content
      </a>
      <aside className="no-print sticky top-0 flex h-dvh flex-col border-rule-2 border-r max-lg:hidden">
        <div className="px-5 pt-4 pb-5">
          <Wordmark />
          <p className="mt-1 text-ink-2 text-sm">{scope}</p>
        </div>
        <NavigationList items={items} />
      </aside>
      <div className="min-w-0">
        <header className="no-print flex flex-wrap items-center gap-2 border-rule-2 border-b px-4 py-2 sm:px-8">
          <div className="mr-auto lg:hidden">
            <Wordmark />
          </div>
          <div className="lg:mr-auto">
            <SearchPalette />
          </div>
          <div className="lg:hidden">
            <PhoneNavigation items={items} />
          </div>
          <p className="text-ink-2 text-sm max-sm:w-full lg:hidden">{scope}</p>
          <AsOfControl today={today} zone={zone} />
          <HelpButton />
          <UserMenu name={user.name} role={user.role} theme={theme}>
            {account}
          </UserMenu>
        </header>
        <main id="content" tabIndex={-1} className="max-w-[104rem] px-4 py-6 outline-none sm:px-8 print:p-0">
          <KnownBand from={knownFrom} zone={zone} />
          {children}
        </main>
        <footer className="no-print max-w-[104rem] px-4 pb-6 empty:hidden sm:px-8">{foot}</footer>
      </div>
    </div>
  );
}
