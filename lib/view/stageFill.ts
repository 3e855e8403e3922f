/** How high a badge is filled, as a share of the circle's height; above step 3 it covers the letter. */
const LEVELS = { 1: 0.22, 2: 0.42, 3: 0.62, 4: 0.82 } as const;

export interface FilledCircle {
  readonly centre: number;
  readonly radius: number;
}

/** The part of a circle that a step fills from below, as an SVG path; step 0 fills nothing and 5 all of it. */
export function stageFill(step: 1 | 2 | 3 | 4, { centre, radius }: FilledCircle): string {
  const share = LEVELS[step];
  const drop = radius * (1 - 2 * share);
  const half = Math.sqrt(Math.max(0, radius * radius - drop * drop));
  const y = (centre + drop).toFixed(2);
  const [left, right] = [(centre - half).toFixed(2), (centre + half).toFixed(2)];
  return `M${left} ${y}A${radius} ${radius} 0 ${share > 0.5 ? 1 : 0} 0 ${right} ${y}Z`;
}
