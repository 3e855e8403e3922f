import { basisHelp } from "@/lib/view/help/basis";
import type { HelpText } from "@/lib/view/help/helpText";
import { lineHelp } from "@/lib/view/help/lines";
import { partHelp } from "@/lib/view/help/parts";
import { planHelp } from "@/lib/view/help/plans";
import { projectHelp } from "@/lib/view/help/projects";
import { recordHelp } from "@/lib/view/help/records";
import { spareHelp } from "@/lib/view/help/spares";

/** The help of every screen. */
export const helpTexts: readonly HelpText[] = [
  ...lineHelp,
  ...partHelp,
  ...spareHelp,
  ...planHelp,
  ...projectHelp,
  ...recordHelp,
  ...basisHelp,
];

/** The help of the page at a path: of its own address before that of many; null where there is none. */
export function helpOf(path: string): HelpText | null {
  const parts = path.split("/");
  const fits = ({ page }: HelpText) => {
    const own = page.split("/");
    return own.length === parts.length && own.every((part, i) => part === "*" || part === parts[i]);
  };
  const stars = ({ page }: HelpText) => page.split("*").length;
  return helpTexts.filter(fits).sort((a, b) => stars(a) - stars(b))[0] ?? null;
}
