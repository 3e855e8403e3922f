import { expect, it } from "vitest";
import { calendarDays } from "@/lib/view/calendarDays";
import type { DateAhead } from "@/lib/view/datesAhead";

const date = (given: Partial<DateAhead> = {}): DateAhead => ({
  ...{ key: "last-order/2027-04-30/Heron R", kind: "last-order", on: "2027-04-30", of: "Heron R" },
  ...{ what: "Last order at the maker", href: "/parts/1", sites: ["VEL", "OST"], units: 560, overdue: false },
  ...given,
});
const seen = { asOf: "2026-11-30", base: "https://ebbline.example" };

it("names what, whose, where and how many, and links to the page", () => {
  expect(calendarDays([date()], seen)).toEqual([
    {
      uid: "last-order%2FHeron%20R@ebbline",
      day: "2027-04-30",
      summary: "Heron R: Last order at the maker",
      description: "Sites: VEL, OST.\nUnits installed: 560.\nAs known on 2026-11-30.",
      url: "https://ebbline.example/parts/1",
      category: "last-order",
    },
  ]);
});

it("keeps the uid of a day that moves, and gives two alike two", () => {
  const uids = (dates: DateAhead[]) => calendarDays(dates, seen).map(({ uid }) => uid);
  const moved = date({ key: "last-order/2027-05-31/Heron R", on: "2027-05-31" });
  expect(uids([moved])).toEqual(uids([date()]));
  expect(new Set(uids([date(), moved])).size).toBe(2);
});

it("leaves out what is 91 days past, keeps 90", () => {
  expect(calendarDays([date({ on: "2026-09-01" }), date({ on: "2026-08-31" })], seen)).toHaveLength(1);
});
