import type { RawCell } from "@/lib/intake/reading";
import type { KeyedRegister, RegisterKey } from "@/lib/intake/registers";

/** Order to load the registers in: each stands on those before it. */
export const LOADING_ORDER: readonly { readonly key: RegisterKey; readonly why: string }[] = [
  { key: "lifecycle", why: "Makes the families and parts known, with their dates, prices and repair." },
  { key: "assets", why: "Makes the sites, lines, machines and controllers the other registers name." },
  { key: "axes", why: "Says which drive, motor and network stands at which machine." },
  { key: "stock", why: "Says what lies on which shelf, and in which state." },
  { key: "events", why: "Says what failed and was removed, when, and how long the line stood." },
  {
    key: "backups",
    why: "Says which copies of the controllers are kept, and whether any was ever put back.",
  },
  {
    key: "contacts",
    why: "Says which function to call at night. Functions only: a call list of people is theirs.",
  },
  { key: "windows", why: "Says on which days a line or a site stands still for work." },
  { key: "scans", why: "Says what was seen on the networks, to be held against the registers above." },
];

/** Fields of the axis survey that describe an item which is no axis. */
const OTHER_ITEM = ["itemClass", "designation", "itemMaker", "itemPart", "itemSerial"];
const PLACE = ["lineCode", "machineCode", "panel"];

/**
 * Rows of a file to start from: the column names, then an example of each kind of row.
 *
 * The axis survey has two kinds: an axis, and one other item of a machine.
 */
export function registerPattern(register: KeyedRegister): RawCell[][] {
  const { fields } = register;
  const only = (wanted: (key: string) => boolean) =>
    fields.map(({ key, example }) => (wanted(key) ? example : null));
  const names = fields.map(({ label }) => label);
  if (register.key !== "axes") return [names, only(() => true)];
  return [
    names,
    only((key) => !OTHER_ITEM.includes(key)),
    only((key) => OTHER_ITEM.includes(key) || PLACE.includes(key)),
  ];
}
