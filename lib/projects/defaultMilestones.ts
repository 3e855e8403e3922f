/**
 * Steps of a motion retrofit with the percent of the budget each earns; common practice, no source. They sum to 100.
 *
 * A project starts with these and no due days: until somebody dates them nothing is planned, so nothing is late.
 */
export const defaultMilestones: readonly { readonly name: string; readonly weight: number }[] = [
  { name: "Machines surveyed", weight: 10 },
  { name: "Retrofit engineered", weight: 15 },
  { name: "Parts delivered", weight: 20 },
  { name: "Controllers ready (firmware floor)", weight: 10 },
  { name: "Drives and motors replaced", weight: 20 },
  { name: "Axes declared and scaling restored", weight: 10 },
  { name: "Homing checked against record", weight: 5 },
  { name: "Line accepted", weight: 10 },
];
