import type { IsoDate } from "@/lib/kernel/isoDate";

/** One device as lists saw it: alike in all but the day. Empty text is not said. */
export interface SeenDevice {
  /** Id of its latest sighting. */
  readonly id: string;
  readonly source: string;
  readonly line: string;
  readonly machine: string;
  readonly network: string;
  readonly controller: string;
  readonly slot: string;
  readonly address: string;
  readonly name: string;
  readonly maker: string;
  readonly number: string;
  readonly revision: string;
  readonly firmware: string;
  readonly serial: string;
  readonly status: string;
  readonly firstOn: IsoDate;
  readonly lastOn: IsoDate;
}

/** A place for a drive, or a controller, as the registers have it on a day. */
export interface RegisterItem {
  readonly kind: "place" | "controller";
  readonly id: string;
  readonly lineCode: string | null;
  readonly machineCode: string | null;
  readonly machineId: string | null;
  readonly axisCode: string | null;
  /** Designation of the place in its machine, or of the controller in its site. */
  readonly designation: string;
  readonly network: string | null;
  readonly node: number | null;
  /** Designation of the controller that runs it; of a controller its own. */
  readonly controller: string | null;
  readonly maker: string | null;
  /** Part of the unit there, else the one that belongs there; of a controller its model. */
  readonly number: string | null;
  readonly aliases: readonly string[];
  readonly revision: string | null;
  readonly serial: string | null;
  /** Of a controller only: nothing else keeps its level on record. */
  readonly firmware: string | null;
}

/** The number in a node address: `7`, `07`, `node 7`, `0x07`; null for an IP, a MAC or words. */
export function nodeNumber(address: string): number | null {
  const text = address.trim().toLowerCase();
  const hex = /^(?:node|n|station|addr(?:ess)?)?[\s.:#]*0x([0-9a-f]{1,3})$/.exec(text)?.[1];
  if (hex !== undefined) return Number.parseInt(hex, 16);
  const found = /^(?:node|n|station|addr(?:ess)?)?[\s.:#]*(\d{1,4})$/.exec(text)?.[1];
  return found === undefined ? null : Number(found);
}

/** Where a list looked: devices of one place are of one list, whichever way they were found. */
export function scopeOf({ source, network, controller, line }: SeenDevice): string {
  return [source, network || controller || line].join("\n");
}
