import "server-only";

const FLOAT8 = 701;
const HEADER_BYTES = 20;
const BYTES_A_NUMBER = 12;

/**
 * Numbers as PostgreSQL sends and takes a `float8[]` of one dimension in its binary format: dimensions, whether there
 * are nulls, type, length, first index, then each number with its length before it.
 *
 * As text a million numbers take longer to write and to read than to compute. A parameter of bytes goes as it is, so
 * that `$1::float8[]` is read from it without a digit.
 *
 * Source: PostgreSQL's `array_recv` and `float8recv`, from memory; a data test reads them back.
 */
export function binaryNumbers(numbers: ArrayLike<number>): Buffer {
  const out = Buffer.allocUnsafe(HEADER_BYTES + numbers.length * BYTES_A_NUMBER);
  [1, 0, FLOAT8, numbers.length, 1].forEach((value, i) => {
    out.writeInt32BE(value, i * 4);
  });
  let at = HEADER_BYTES;
  for (let i = 0; i < numbers.length; i++) {
    out.writeInt32BE(8, at);
    out.writeDoubleBE(numbers[i] as number, at + 4);
    at += BYTES_A_NUMBER;
  }
  return out;
}
