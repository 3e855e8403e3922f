import { Tabs } from "@/app/_ui/Tabs";

const TABS = [
  { key: "board", label: "Board", path: "" },
  { key: "solve", label: "Search", path: "/solve" },
  { key: "choices", label: "Choices", path: "/choices" },
  { key: "money", label: "Money and hands", path: "/money" },
  { key: "request", label: "Capital request", path: "/request" },
] as const;

interface BoardTabsProps {
  readonly id: string;
  readonly current: (typeof TABS)[number]["key"];
}

/** The views of one plan. */
export function BoardTabs({ id, current }: BoardTabsProps) {
  return (
    <Tabs
      label="Views of the plan"
      tabs={TABS.map(({ key, label, path }) => ({
        ...{ label, href: `/plans/${id}${path}`, current: key === current },
      }))}
    />
  );
}
