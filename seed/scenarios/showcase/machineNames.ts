const BY_KIND: Readonly<Record<string, readonly string[]>> = {
  carton: ["Erector", "Infeed", "Loader", "Tucker", "Gluer", "Discharge", "Checkweigher"],
  wrap: ["Unwind", "Film feed", "Former", "Cross seal", "Knife", "Discharge", "Stacker"],
  tissue: ["Unwind", "Embosser", "Folder", "Cutter", "Stacker", "Bander"],
  fill: ["Cup feed", "Filler", "Doser", "Lid feed", "Sealer", "Discharge"],
  board: ["Sheet feed", "Printer", "Creaser", "Slotter", "Delivery", "Counter"],
  hygiene: ["Unwind", "Core former", "Laminator", "Elastic unit", "Die cutter", "Folder", "Stacker"],
  handling: ["Infeed", "Aligner", "Grouper", "Pusher", "Lift", "Discharge"],
};

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/carton|tray|case|sleeve|tea|label/i, "carton"],
  [/wrap|sachet|pouch|bag|snack/i, "wrap"],
  [/tissue|roll/i, "tissue"],
  [/cup|tube|sauce/i, "fill"],
  [/board|die|glue|stack/i, "board"],
  [/diaper|wipes/i, "hygiene"],
];

/** What a machine does, from the kind of its line and its place in it. */
export function nameMachine(lineName: string, code: string): string {
  const kind = KINDS.find(([pattern]) => pattern.test(lineName))?.[1] ?? "handling";
  const names = BY_KIND[kind] ?? [];
  const index = Number(code.slice(1)) - 1;
  return names[index] ?? `Unit ${index + 1}`;
}

const AXIS_NAMES = [
  "Infeed belt",
  "Pusher",
  "Lift",
  "Cross jaw",
  "Film pull",
  "Knife",
  "Transfer",
  "Fold arm left",
  "Fold arm right",
  "Gripper",
  "Register roll",
  "Outfeed belt",
  "Rotary table",
  "Glue head",
  "Aligner",
  "Stacker lift",
];

/** What an axis does, by its place in the machine. */
export function nameAxis(index: number): string {
  return AXIS_NAMES[index % AXIS_NAMES.length] ?? "Axis";
}
