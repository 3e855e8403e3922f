import { lookAlikeKey, type PartNumber, partKey, suggestLookAlikes } from "@/lib/intake/readPartNumber";

/** A part that is known before the file is read. */
export interface KnownPart {
  readonly maker: string;
  readonly number: string;
  readonly itemClass: string;
  /** Other spellings and storeroom numbers. */
  readonly aliases: readonly string[];
  /** Storeroom numbers, each of one site. */
  readonly siteAliases?: readonly { readonly siteCode: string; readonly alias: string }[];
  /** The part it was merged into; itself where absent. */
  readonly means?: { readonly maker: string; readonly number: string };
}

/** Which part a number in a file means. */
export type FoundPart =
  | {
      readonly kind: "known";
      readonly maker: string;
      readonly number: string;
      readonly revision: string | null;
    }
  | {
      readonly kind: "new";
      readonly maker: string | null;
      readonly number: string;
      readonly revision: string | null;
    }
  /** Several known parts are spelled like this, or one differs by a letter that looks like a digit. */
  | { readonly kind: "doubt"; readonly candidates: readonly string[] };

/** Known parts, found by spelling without case and separators. */
export class Catalogue {
  readonly #byKey = new Map<string, KnownPart[]>();
  /** Keys that differ by look-alike letters and digits only, by what they share. */
  readonly #byLookAlike = new Map<string, Set<string>>();
  readonly #byStoreroom = new Map<string, KnownPart>();

  constructor(parts: readonly KnownPart[]) {
    for (const part of parts) this.add(part);
  }

  add(part: KnownPart): void {
    for (const key of new Set([part.number, ...part.aliases].map(partKey))) {
      const same = this.#byKey.get(key) ?? [];
      if (!same.some((one) => one.maker === part.maker && one.number === part.number))
        this.#byKey.set(key, [...same, part]);
      const alike = lookAlikeKey(key);
      this.#byLookAlike.set(alike, (this.#byLookAlike.get(alike) ?? new Set<string>()).add(key));
    }
    for (const { siteCode, alias } of part.siteAliases ?? [])
      this.#byStoreroom.set(`${siteCode}\n${partKey(alias)}`, part);
  }

  /** The part a storeroom calls by its own number; null when it calls none so. */
  findStoreroom(siteCode: string, number: string): KnownPart | null {
    return this.#byStoreroom.get(`${siteCode}\n${partKey(number)}`) ?? null;
  }

  /**
   * The part a number means: the whole number first, then without its revision. A spelling that two makers
   * share needs the maker; one that only looks alike is never taken for the other.
   */
  find(written: PartNumber, maker: string | null): FoundPart {
    for (const [key, revision] of [
      [written.fullKey, null],
      [written.key, written.revision],
    ] as const) {
      const same = meantBy(this.#sameMaker(this.#byKey.get(key) ?? [], maker));
      const [only] = same;
      if (same.length > 1)
        return { kind: "doubt", candidates: same.map((one) => `${one.maker} ${one.number}`) };
      if (only) return { kind: "known", maker: only.maker, number: only.number, revision };
    }
    const keys = this.#byLookAlike.get(lookAlikeKey(written.key)) ?? [];
    const alike = suggestLookAlikes(written.key, [...keys]).flatMap((key) => this.#byKey.get(key) ?? []);
    if (alike.length > 0) return { kind: "doubt", candidates: meantBy(alike).map((part) => part.number) };
    return { kind: "new", maker, number: written.base, revision: written.revision };
  }

  #sameMaker(parts: readonly KnownPart[], maker: string | null): readonly KnownPart[] {
    if (maker === null) return parts;
    return parts.filter((part) => partKey(part.maker) === partKey(maker));
  }
}

/** The parts that count: a merged one means the one it was merged into, and each is named once. */
function meantBy(
  parts: readonly KnownPart[],
): readonly { readonly maker: string; readonly number: string }[] {
  const meant = parts.map(({ maker, number, means }) => means ?? { maker, number });
  return [...new Map(meant.map((one) => [`${one.maker}\n${one.number}`, one])).values()];
}
