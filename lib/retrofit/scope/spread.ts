import type { Norm } from "@/lib/retrofit/costNorm";

/** Standard normal quantile of 0.8. */
const Z80 = 0.8416;

export const NOTHING: Norm = [0, 0, 0];

/** Each end times a number or its own counterpart. */
export function times(norm: Norm, by: number | Norm): Norm {
  const [low, typical, high] = typeof by === "number" ? ([by, by, by] as const) : by;
  return [norm[0] * low, norm[1] * typical, norm[2] * high];
}

/** Sum, all low, all typical or all high together. */
export function sum(norms: readonly Norm[]): Norm {
  return norms.reduce<Norm>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], NOTHING);
}

/** Three-point mean, (low + 4 typical + high) / 6 (textbook, from memory). */
export function meanOf([low, typical, high]: Norm): number {
  return (low + 4 * typical + high) / 6;
}

/**
 * The value that is enough four times in five: mean + 0.8416 (high - low) / 6.
 *
 * Takes the three-point mean and its usual standard deviation, (high - low) / 6, as a normal one; textbook, from memory.
 */
export function enoughInFourOfFive(norm: Norm): number {
  return meanOf(norm) + (Z80 * (norm[2] - norm[0])) / 6;
}
