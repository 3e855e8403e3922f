import { lookup } from "node:dns/promises";
import { BlockList, isIP } from "node:net";

/** Networks that are not the open internet: IANA's special-purpose registries, RFC 6890 and its later entries. */
const CLOSED: readonly string[] = [
  ...["0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12"],
  ...["192.0.0.0/24", "192.0.2.0/24", "192.88.99.0/24", "192.168.0.0/16", "198.18.0.0/15"],
  ...["198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4"],
  ...["::/96", "64:ff9b::/96", "64:ff9b:1::/48", "100::/64", "2001::/23", "2001:db8::/32", "2002::/16"],
  ...["3fff::/20", "5f00::/16", "fc00::/7", "fe80::/10", "fec0::/10", "ff00::/8"],
];

const familyOf = (ip: string) => (isIP(ip) === 6 ? "ipv6" : "ipv4");

function listOf(networks: readonly string[]): BlockList {
  const list = new BlockList();
  for (const network of networks) {
    const [ip = "", bits] = network.split("/");
    const most = isIP(ip) === 6 ? 128 : 32;
    list.addSubnet(ip, bits === undefined ? most : Number(bits), familyOf(ip));
  }
  return list;
}

const closed = listOf(CLOSED);

/** Hosts and networks of the company that may be told though they are closed to the outside. */
export interface Allowed {
  readonly hosts: ReadonlySet<string>;
  readonly networks: BlockList;
}

/**
 * Reads a list of names, addresses and networks, such as `mes.plant.example, 10.20.0.0/16`.
 *
 * @throws {TypeError} naming a network that is none.
 */
export function readAllowed(written: string): Allowed {
  const entries = written.split(/[\s,]+/).filter((entry) => entry !== "");
  const networks = entries.filter((entry) => isIP(entry.split("/")[0] ?? "") !== 0);
  const hosts = entries.filter((entry) => !networks.includes(entry)).map((entry) => entry.toLowerCase());
  return { hosts: new Set(hosts), networks: listOf(networks) };
}

/** Whether an address may be spoken to: in the open internet, or allowed. */
export function isOpen(ip: string, allowed: Allowed): boolean {
  // An IPv4 address written as IPv6 is judged as what it is: BlockList does so by itself for rules of IPv4.
  const family = familyOf(ip);
  return allowed.networks.check(ip, family) || !closed.check(ip, family);
}

/** Where a host may be reached, or why it may not be spoken to. */
export type Reach = { readonly ips: readonly string[] } | { readonly refused: string };

/**
 * Looks up a host and holds every address it has against the closed networks; one closed address refuses all.
 *
 * Who sends must speak to one of these very addresses and not look up again.
 */
export async function reachOf(address: URL, allowed: Allowed): Promise<Reach> {
  const host = address.hostname.replace(/^\[|\]$/g, "").toLowerCase();
  const isNamed = allowed.hosts.has(host);
  const found = isIP(host)
    ? [host]
    : await lookup(host, { all: true }).then(
        (all) => all.map((one) => one.address),
        () => [],
      );
  if (found.length === 0) return { refused: `The name ${host} is not known to the name server.` };
  const shut = isNamed ? undefined : found.find((ip) => !isOpen(ip, allowed));
  if (shut !== undefined)
    return {
      refused: `${host} is ${shut}, which is inside a closed network. Whoever runs Ebbline may allow it in EBBLINE_WEBHOOK_ALLOW.`,
    };
  const isInside = isNamed || found.every((ip) => allowed.networks.check(ip, familyOf(ip)));
  if (address.protocol === "http:" && !isInside)
    return { refused: "An address outside the company must begin with https." };
  return { ips: found };
}
