import type { ItemClass } from "@/lib/risk/evaluation";

const CLASS_NAMES = {
  drive: "drive",
  motor: "motor",
  controller: "controller",
  power_supply: "power supply",
  io: "I/O module",
  hmi: "operator panel",
  converter: "fibre converter",
  network_card: "network card",
} satisfies Record<ItemClass, string>;

/** The class of an item in words. */
export function itemClassName(itemClass: ItemClass): string {
  return CLASS_NAMES[itemClass];
}

/** What a pool is called on the screen: its part's number, or that nobody has read it. */
export function partLabel(poolId: string, number: string | undefined): string {
  if (number !== undefined) return number;
  const itemClass = poolId.slice(poolId.indexOf(":") + 1);
  return `Unidentified ${itemClass in CLASS_NAMES ? itemClassName(itemClass as ItemClass) : "item"}`;
}
