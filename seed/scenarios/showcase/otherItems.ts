import type { RandomStream } from "@/lib/kernel/random";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { PlannedController } from "@/seed/scenarios/showcase/controllers";
import type { PlannedMachine } from "@/seed/scenarios/showcase/layout";
import { planNetworks } from "@/seed/scenarios/showcase/networks";
import type { Plant, PositionSketch } from "@/seed/scenarios/showcase/positions";

const CARDS = 118;
const OLD_RACKS = 62;
const NEW_RACKS = 148;
const OLD_PANELS = 96;
const SUPPLIES = 410;
const CONVERTERS = 132;

type Sketcher = (machine: PlannedMachine, partKey: string) => PositionSketch;

const LETTER: Readonly<Record<string, string>> = {
  controller: "K",
  network_card: "KN",
  io: "KF",
  hmi: "P",
  power_supply: "G",
  converter: "U",
};

/** Designations count up in each machine, by kind of item. */
function sketcher(itemClass: ItemClass): Sketcher {
  const used = new Map<string, number>();
  return (machine, partKey) => {
    const number = (used.get(machine.id) ?? 0) + 1;
    used.set(machine.id, number);
    return { machine, itemClass, designation: `${LETTER[itemClass]}${number}`, partKey };
  };
}

const carrier = (controller: PlannedController): PlannedMachine => controller.machines[0] as PlannedMachine;
const byAge = (a: PlannedController, b: PlannedController): number =>
  carrier(a).line.year - carrier(b).line.year;
const isOld = ({ model }: PlannedController): boolean => model !== "Slate 7";

function controllersAndPanels(controllers: readonly PlannedController[]): PositionSketch[] {
  const controllerAt = sketcher("controller");
  const panelAt = sketcher("hmi");
  const parts = { "Slate 3": "S3-300", "Slate 5": "S5-500", "Slate 7": "S7-700" } as const;
  const aged = [...controllers].sort(byAge);
  return [
    ...controllers.map((one) => controllerAt(carrier(one), parts[one.model])),
    ...aged.map((one, i) => panelAt(carrier(one), i < OLD_PANELS ? "L8-08" : "LX-12")),
  ];
}

/** Bus cards in the oldest controllers, the old racks behind the oldest of those, new racks elsewhere. */
function cardsAndRacks({ controllers, machines }: Plant, chance: RandomStream): PositionSketch[] {
  const cardAt = sketcher("network_card");
  const rackAt = sketcher("io");
  const carded = controllers.filter(isOld).sort(byAge).slice(0, CARDS);
  const old = carded.slice(0, OLD_RACKS).map(carrier);
  const onNew = new Set(controllers.filter((one) => !isOld(one)).flatMap((one) => one.machines));
  const rest = chance.shuffle(machines.filter((machine) => !old.includes(machine)));
  const modern = [...rest.filter((m) => onNew.has(m)), ...rest.filter((m) => !onNew.has(m))];
  return [
    ...carded.map((one) => cardAt(carrier(one), "LR-01")),
    ...old.map((machine) => rackAt(machine, "PB-16")),
    ...modern.slice(0, NEW_RACKS).map((machine) => rackAt(machine, "PN-16")),
  ];
}

function supplies(machines: readonly PlannedMachine[]): PositionSketch[] {
  const at = sketcher("power_supply");
  const bySize = [...machines].sort((a, b) => b.axes.length - a.axes.length);
  const second = bySize.slice(0, SUPPLIES - machines.length);
  return [...machines, ...second].map((machine) => at(machine, "BK-240"));
}

/** One converter a ring, and a second one in the longest rings. */
function converters({ axes }: Plant): PositionSketch[] {
  const at = sketcher("converter");
  const { networks, seats } = planNetworks(axes);
  const rings = networks
    .filter(({ kind }) => kind === "fibre_ring")
    .map(({ id }) => axes.filter((axis) => seats.get(axis)?.networkId === id))
    .sort((a, b) => b.length - a.length);
  const last = rings.slice(0, CONVERTERS - rings.length).map((ring) => ring.at(-1));
  return [...rings.map((ring) => ring[0]), ...last].flatMap((axis) =>
    axis ? [at(axis.machine, "GL-01")] : [],
  );
}

/** Controllers, panels, cards, racks, supplies and converters of the machines. */
export function planOtherItems(plant: Plant, chance: RandomStream): PositionSketch[] {
  return [
    ...controllersAndPanels(plant.controllers),
    ...cardsAndRacks(plant, chance),
    ...supplies(plant.machines),
    ...converters(plant),
  ];
}
