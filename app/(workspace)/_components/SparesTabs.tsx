import { Tabs } from "@/app/_ui/Tabs";

const VIEWS = [
  { label: "Weekly look", href: "/spares" },
  { label: "Weekly review", href: "/review" },
  { label: "Counts", href: "/counts" },
  { label: "Storage care", href: "/care" },
  { label: "Repairs", href: "/repairs" },
  { label: "Levels and surplus", href: "/levels" },
  { label: "Cover", href: "/cover" },
  { label: "Pool board", href: "/pool" },
  { label: "Spend", href: "/spend" },
] as const;

/** The views of the spares, the one shown marked. */
export function SparesTabs({ current }: { readonly current: (typeof VIEWS)[number]["href"] }) {
  return <Tabs label="Spares" tabs={VIEWS.map((view) => ({ ...view, current: view.href === current }))} />;
}
