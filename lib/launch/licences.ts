/** What a lock file says of one package. */
interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
}

export interface LicenceUse {
  readonly licence: string;
  /** Names with versions, in order. */
  readonly packages: readonly string[];
  /** Whether some of them come with the product, rather than only test it. */
  readonly isShipped: boolean;
  readonly standing: "free" | "look";
}

/**
 * Licences under which a product may be passed on with no more than their notice, or with changes of their own files
 * alone; names of SPDX. A lawyer's list would be longer: what is not named here is to be looked at, not forbidden.
 */
const FREE = new Set([
  ...["0BSD", "Apache-2.0", "BlueOak-1.0.0", "BSD-2-Clause", "BSD-3-Clause", "BSL-1.0", "CC-BY-4.0", "ISC"],
  ...["MIT", "MIT-0", "MPL-2.0", "OFL-1.1", "Python-2.0", "Unlicense", "Zlib"],
]);

/** Whether a licence expression is free: of "OR" one part is enough, of "AND" each must be. */
export function isFree(expression: string): boolean {
  const plain = expression.replace(/[()]/gu, "");
  return plain
    .split(/\s+or\s+/iu)
    .some((choice) => choice.split(/\s+and\s+/iu).every((name) => FREE.has(name.trim())));
}

/** The licences of a lock file, those to look at first, then by name. */
export function licencesOf(packages: Readonly<Record<string, LockedPackage>>): LicenceUse[] {
  const byLicence = new Map<string, { names: string[]; isShipped: boolean }>();
  for (const [path, { version, license = "none named", dev = false }] of Object.entries(packages)) {
    const name = path.split("node_modules/").at(-1);
    if (!name) continue;
    const use = byLicence.get(license) ?? { names: [], isShipped: false };
    use.names.push(`${name} ${version ?? "?"}`);
    use.isShipped ||= !dev;
    byLicence.set(license, use);
  }
  return [...byLicence]
    .map(([licence, { names, isShipped }]): LicenceUse => {
      const standing = isFree(licence) ? "free" : "look";
      return { licence, packages: [...new Set(names)].sort(), isShipped, standing };
    })
    .sort((a, b) => b.standing.localeCompare(a.standing) || a.licence.localeCompare(b.licence));
}
