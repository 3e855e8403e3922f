import { partKey } from "@/lib/intake/readPartNumber";
import { nodeNumber, type RegisterItem, type SeenDevice } from "@/lib/intake/sightings/device";

export type MatchWay = "address" | "name" | "serial";

/** What a device is taken for. */
export interface Match {
  readonly item: RegisterItem;
  readonly by: MatchWay;
  /** The register has the serial number it showed at this other place. */
  readonly elsewhere: RegisterItem | null;
}

const joined = (...parts: readonly (string | null)[]) => parts.map((part) => partKey(part ?? "")).join("\n");

/** Items of a site under every name a list may give them; a name two items share finds neither. */
class ItemIndex {
  readonly #found = new Map<string, RegisterItem | null>();

  add(key: string, item: RegisterItem): void {
    const known = this.#found.get(key);
    if (known === undefined) this.#found.set(key, item);
    else if (known !== null && known.id !== item.id) this.#found.set(key, null);
  }

  find(key: string): RegisterItem | null {
    return this.#found.get(key) ?? null;
  }
}

/**
 * Takes each device for at most one item of the register: by network or controller and node, else by designation, else
 * by serial number. What two items share finds neither. Time grows with devices and items, not with their product.
 */
export class DeviceMatcher {
  readonly #addresses = new ItemIndex();
  readonly #names = new ItemIndex();
  readonly #serials = new ItemIndex();

  constructor(items: readonly RegisterItem[]) {
    for (const item of items) this.#add(item);
  }

  match(device: SeenDevice): Match | null {
    const bySerial = device.serial === "" ? null : this.#serials.find(partKey(device.serial));
    const here = this.#here(device);
    if (here === null) return bySerial && { item: bySerial, by: "serial", elsewhere: null };
    return { ...here, elsewhere: bySerial && bySerial.id !== here.item.id ? bySerial : null };
  }

  #here(device: SeenDevice): Omit<Match, "elsewhere"> | null {
    const node = nodeNumber(device.address);
    if (node !== null)
      for (const where of [device.network, device.controller]) {
        const item = where === "" ? null : this.#addresses.find(joined(where, String(node)));
        if (item) return { item, by: "address" };
      }
    for (const key of namesOf(device)) {
      const item = this.#names.find(key);
      if (item) return { item, by: "name" };
    }
    return null;
  }

  #add(item: RegisterItem): void {
    if (item.serial !== null) this.#serials.add(partKey(item.serial), item);
    if (item.kind === "controller") {
      this.#names.add(joined(item.designation), item);
      return;
    }
    for (const where of [item.network, item.controller])
      if (where !== null && item.node !== null) this.#addresses.add(joined(where, String(item.node)), item);
    for (const own of [item.designation, item.axisCode]) {
      if (own === null || own === "") continue;
      this.#names.add(joined(item.lineCode, item.machineCode, own), item);
      this.#names.add(joined([item.lineCode, item.machineCode, own].join("")), item);
    }
  }
}

function namesOf({ name, address, line, machine }: SeenDevice): string[] {
  return [name, address]
    .filter((one) => partKey(one) !== "")
    .flatMap((one) => [joined(one), ...(machine === "" ? [] : [joined(line, machine, one)])]);
}
