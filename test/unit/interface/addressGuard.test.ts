import { expect, it } from "vitest";
import { isOpen, reachOf, readAllowed } from "@/lib/jobs/addressGuard";

const none = readAllowed("");

// Special-purpose registries of IANA (RFC 6890 and its later entries), one address of each network.
it.each([
  ...["0.0.0.1", "10.255.0.1", "100.64.3.2", "127.9.9.9", "169.254.169.254", "172.16.0.1", "172.31.255.255"],
  ...["192.0.0.8", "192.0.2.1", "192.168.1.1", "198.18.0.1", "198.51.100.7", "203.0.113.9", "224.0.0.1"],
  ...[
    "255.255.255.255",
    "::",
    "::1",
    "::ffff:10.0.0.1",
    "::ffff:7f00:1",
    "64:ff9b::a00:1",
    "fc00::1",
    "fd12::1",
  ],
  ...["fe80::1", "ff02::1", "2001:db8::1", "2002:a00:1::1"],
])("%s is closed", (ip) => {
  expect(isOpen(ip, none)).toBe(false);
});

it.each(["1.1.1.1", "172.32.0.1", "100.128.0.1", "11.0.0.1", "2606:4700::1", "::ffff:1.1.1.1"])(
  "%s is open",
  (ip) => {
    expect(isOpen(ip, none)).toBe(true);
  },
);

it("what is allowed may be spoken to, by http too; nothing beside it", async () => {
  const allowed = readAllowed("10.20.0.0/16, localhost, fd00:1::/32");
  expect([isOpen("10.20.3.4", allowed), isOpen("10.21.3.4", allowed)]).toEqual([true, false]);
  expect([isOpen("fd00:1::5", allowed), isOpen("fd00:2::5", allowed)]).toEqual([true, false]);
  expect(await reachOf(new URL("http://10.20.3.4/x"), allowed)).toEqual({ ips: ["10.20.3.4"] });
  expect(await reachOf(new URL("http://localhost/x"), allowed)).toHaveProperty("ips");
  expect(await reachOf(new URL("http://1.1.1.1/x"), allowed)).toHaveProperty("refused");
  expect(await reachOf(new URL("https://1.1.1.1/x"), allowed)).toEqual({ ips: ["1.1.1.1"] });
});

it("an address written in another way is the same address", async () => {
  for (const host of ["2130706433", "0x7f.1", "0177.0.0.1"])
    expect(await reachOf(new URL(`https://${host}/x`), none)).toHaveProperty("refused");
});
