/** Rows as columns of text: many rows reach a page as a few long texts instead of hundreds of thousands of small values. */
export interface PackedRows {
  readonly count: number;
  /** Numbers of a column, parted by commas; nothing between two commas is null. Each number comes back to the last bit. */
  readonly numbers: Readonly<Record<string, string>>;
  /** The different words of a column, and for each row which of them it has. */
  readonly words: Readonly<Record<string, { readonly list: readonly string[]; readonly at: string }>>;
}

export type Flat<N extends string, W extends string> = Readonly<Record<N, number | null>> &
  Readonly<Record<W, string>>;

export interface PackColumns<N extends string, W extends string> {
  readonly numbers: readonly N[];
  readonly words: readonly W[];
}

/** Packs rows; `unpackRows` with the same columns gives them again. */
export function packRows<N extends string, W extends string>(
  rows: readonly Flat<N, W>[],
  columns: PackColumns<N, W>,
): PackedRows {
  const numbers = columns.numbers.map((name) => [name, rows.map((row) => row[name] ?? "").join(",")]);
  const words = columns.words.map((name) => {
    const places = new Map<string, number>();
    const at = rows.map((row) => {
      const known = places.get(row[name]);
      if (known !== undefined) return known;
      places.set(row[name], places.size);
      return places.size - 1;
    });
    return [name, { list: [...places.keys()], at: at.join(",") }];
  });
  return { count: rows.length, numbers: Object.fromEntries(numbers), words: Object.fromEntries(words) };
}

/** @throws {RangeError} when a column is missing or does not have a value for each row. */
export function unpackRows<N extends string, W extends string>(
  packed: PackedRows,
  columns: PackColumns<N, W>,
): Flat<N, W>[] {
  const rows: Record<string, number | string | null>[] = Array.from({ length: packed.count }, () => ({}));
  const fill = (name: string, text: string | undefined, read: (piece: string) => number | string | null) => {
    const pieces = text === undefined || packed.count === 0 ? [] : text.split(",");
    if (pieces.length !== packed.count)
      throw new RangeError(`column ${name} must have ${packed.count} values, got ${pieces.length}`);
    for (const [i, row] of rows.entries()) row[name] = read(pieces[i] ?? "");
  };
  for (const name of columns.numbers)
    fill(name, packed.numbers[name], (piece) => (piece === "" ? null : Number(piece)));
  for (const name of columns.words) {
    const { list, at } = packed.words[name] ?? { list: [], at: undefined };
    fill(name, at, (piece) => list[Number(piece)] ?? "");
  }
  return rows as Flat<N, W>[];
}
