import { driveDesignation, motorDesignation } from "@/lib/intake/intents/designations";
import { type AxisFactsRow, UNSURVEYED } from "@/seed/panelTables";
import type { RegisterRow } from "@/seed/registerFiles/registerRow";
import { placeOf, plateNumber, type SiteView } from "@/seed/registerFiles/siteView";
import type { AxisRow, NetworkRow } from "@/seed/siteTables";
import type { PositionRow, UnitRow } from "@/seed/tables";

interface Fitted {
  readonly maker: string | null;
  readonly part: string | null;
  readonly serial: string | null;
}

/** What sits in each place today, by position id. */
function sitting(view: SiteView): Map<string, UnitRow> {
  const units = new Map(view.tables.Unit.map((unit) => [unit.id, unit]));
  const now = view.tables.Placement.filter(({ untilOn }) => untilOn === null);
  return new Map(
    now.flatMap(({ positionId, unitId }) => {
      const unit = units.get(unitId);
      return unit ? [[positionId, unit] as const] : [];
    }),
  );
}

function fittedAt(
  view: SiteView,
  position: PositionRow | undefined,
  units: ReadonlyMap<string, UnitRow>,
): Fitted {
  const part = view.part.get(position?.partId ?? "");
  const unit = units.get(position?.id ?? "");
  return {
    maker: part?.maker ?? null,
    part: plateNumber(part, unit?.revision ?? null),
    serial: unit?.serial ?? null,
  };
}

/** Columns of cables, travel and homing, and the day of the survey. */
function factsOf(axis: AxisFactsRow) {
  return {
    ...{ powerCable: axis.powerCable, powerCableLength: axis.powerCableLength },
    powerCableInChain: axis.powerCableInChain,
    ...{ feedbackCable: axis.feedbackCable, feedbackCableLength: axis.feedbackCableLength },
    feedbackCableInChain: axis.feedbackCableInChain,
    ...{ travel: axis.travel, hardLow: axis.hardLow, hardHigh: axis.hardHigh },
    ...{ softLow: axis.softLow, softHigh: axis.softHigh },
    ...{ homing: axis.homing, homeOffset: axis.homeOffset },
    surveyedOn: axis.powerCableReadOn,
  };
}
const NO_FACTS = factsOf(UNSURVEYED);

const NO_AXIS = {
  axisCode: null,
  axisName: null,
  axisInServiceYear: null,
  networkName: null,
  networkKind: null,
  networkProfileFamily: null,
  ringOrder: null,
  nodeAddress: null,
  feedback: null,
  driveMaker: null,
  drivePart: null,
  driveSerial: null,
  motorMaker: null,
  motorPart: null,
  motorSerial: null,
  countsPerRev: null,
  motorRevs: null,
  loadRevs: null,
  unitsPerLoadRev: null,
  travelUnit: null,
  ...NO_FACTS,
};
const NO_ITEM = { itemClass: null, designation: null, itemMaker: null, itemPart: null, itemSerial: null };

interface AxisPlace {
  readonly axis: AxisRow;
  readonly network: NetworkRow | undefined;
  readonly drive: Fitted;
  readonly motor: Fitted;
}

function axisRow({ axis, network, drive, motor }: AxisPlace) {
  return {
    axisCode: axis.code,
    axisName: axis.name,
    axisInServiceYear: axis.inServiceYear,
    networkName: network?.name ?? null,
    networkKind: network?.kind ?? null,
    networkProfileFamily: network?.profileFamily ?? null,
    ringOrder: axis.ringOrder,
    nodeAddress: axis.nodeAddress,
    feedback: axis.feedback,
    driveMaker: drive.maker,
    drivePart: drive.part,
    driveSerial: drive.serial,
    motorMaker: motor.maker,
    motorPart: motor.part,
    motorSerial: motor.serial,
    countsPerRev: axis.countsPerRev,
    motorRevs: axis.motorRevs,
    loadRevs: axis.loadRevs,
    unitsPerLoadRev: axis.unitsPerLoadRev,
    travelUnit: axis.travelUnit,
    ...factsOf(axis),
    ...NO_ITEM,
  };
}

/** The axis survey: machine by machine its axes with drive and motor, then its other items. */
export function axisRegister(view: SiteView): RegisterRow[] {
  const units = sitting(view);
  const networks = new Map(view.tables.Network.map((network) => [network.id, network]));
  const places = new Map(view.tables.Position.map((one) => [`${one.machineId}/${one.designation}`, one]));
  const panels = new Map(view.tables.Panel.map(({ id, designation }) => [id, designation]));
  return view.machines.flatMap((machine) => {
    const place = placeOf(view, machine.id);
    const panelOf = (designation: string) =>
      panels.get(places.get(`${machine.id}/${designation}`)?.panelId ?? "") ?? null;
    const at = (designation: string) => fittedAt(view, places.get(`${machine.id}/${designation}`), units);
    const axes = view.tables.Axis.filter(({ machineId }) => machineId === machine.id).map((axis) => ({
      ...place,
      panel: panelOf(driveDesignation(axis.code)),
      ...axisRow({
        axis,
        network: networks.get(axis.networkId ?? ""),
        drive: at(driveDesignation(axis.code)),
        motor: at(motorDesignation(axis.code)),
      }),
    }));
    const others = view.tables.Position.filter((one) => one.machineId === machine.id && one.axisId === null);
    const items = others.map(({ designation, itemClass }) => {
      const { maker, part, serial } = at(designation);
      return {
        ...place,
        panel: panelOf(designation),
        ...NO_AXIS,
        itemClass,
        designation,
        itemMaker: maker,
        itemPart: part,
        itemSerial: serial,
      };
    });
    return [...axes, ...items];
  });
}
