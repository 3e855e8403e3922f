import { Tabs } from "@/app/_ui/Tabs";

const VIEWS = [
  { label: "Data footing", href: "/footing" },
  { label: "Seen and on record", href: "/sightings" },
] as const;

/** The views of how good the records are, the one shown marked. */
export function FootingTabs({ current }: { readonly current: (typeof VIEWS)[number]["href"] }) {
  return (
    <Tabs label="Data footing" tabs={VIEWS.map((view) => ({ ...view, current: view.href === current }))} />
  );
}
