import { Tabs } from "@/app/_ui/Tabs";

/** The pages of a project, in the order the work passes them; each is a folder of its address. */
const PAGES = [
  { page: "overview", label: "Overview" },
  { page: "schedule", label: "Schedule" },
  { page: "axes", label: "Axis records" },
  { page: "money", label: "Money" },
  { page: "cutover", label: "Cutover" },
  { page: "points", label: "Open points" },
  { page: "close", label: "Close-out" },
  { page: "benefit", label: "Benefit" },
] as const;

/** Pages that contractors do not open. */
const INSIDE: readonly string[] = ["money", "close", "benefit"];

interface ProjectLinksProps {
  readonly code: string;
  readonly current: (typeof PAGES)[number]["page"];
  /** Shown to a contractor. */
  readonly outside?: boolean;
}

/** The row of links between the pages of one project. */
export function ProjectLinks({ code, current, outside = false }: ProjectLinksProps) {
  const home = `/projects/${encodeURIComponent(code)}`;
  return (
    <Tabs
      label={`Pages of project ${code}`}
      tabs={PAGES.filter(({ page }) => !outside || !INSIDE.includes(page)).map(({ page, label }) => ({
        label,
        href: page === "overview" ? home : `${home}/${page}`,
        current: page === current,
      }))}
    />
  );
}
