import "server-only";
import {
  date,
  id,
  json,
  line,
  money,
  number,
  part,
  share,
  site,
  text,
  yesNo,
} from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

const onLine = (code: string) => ({ line: { code } });
const onMachineOfLine = (code: string) => ({ machine: { line: { code } } });

/** What stands where. */
export const installedLists: readonly RecordList[] = [
  {
    ...{ name: "sites", title: "Sites", about: "Sites", page: "/installed", model: "site" },
    under: (where) => where,
    columns: [
      ...[id(), text("code", "Code"), text("name", "Name"), text("country", "Country")],
      ...[text("timeZone", "Time zone"), text("currency", "Currency")],
    ],
  },
  {
    ...{ name: "line-records", title: "Lines as recorded", page: "/installed", model: "line" },
    about: "Lines with what a stop costs, as somebody stated it",
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        text("code", "Code"),
        text("name", "Name"),
        number("shiftsPerWeek", "Shifts a week"),
      ],
      ...[
        number("inServiceYear", "In service since"),
        money("costPerHour", "Cost of a stop per hour", "site.currency"),
      ],
      ...[
        money("costFixed", "Cost of any stop", "site.currency"),
        json("costSteps", "Further costs by hours"),
      ],
      ...[
        text("site.currency", "Currency"),
        text("costOwner", "Answers for the cost"),
        text("costMethod", "Cost found by"),
      ],
      ...[date("costApprovedOn", "Cost approved on"), date("costValidUntil", "Cost valid until")],
      ...[text("costEvidence", "Evidence of the cost"), number("bufferHours", "Buffer", "h")],
      ...[share("unrecoveredShare", "Share not recovered"), text("note", "Note")],
    ],
  },
  {
    ...{ name: "machines", title: "Machines", about: "Machines", page: "/installed", model: "machine" },
    under: (where) => ({ line: { site: where } }),
    filters: { line: onLine },
    columns: [
      ...[id(), ...site("line.site"), ...line(), text("code", "Code"), text("name", "Name")],
      ...[number("inServiceYear", "In service since"), text("controller.designation", "Controller")],
      ...[
        id("controllerId", "Controller id"),
        text("standbyGroup", "Stand-by group"),
        number("standbyNeeded", "Machines needed"),
      ],
    ],
  },
  {
    ...{ name: "panels", title: "Panels", about: "Panels of machines", page: "/installed", model: "panel" },
    under: (where) => ({ machine: { line: { site: where } } }),
    filters: { line: onMachineOfLine },
    columns: [
      ...[id(), ...line("machine.line"), text("machine.code", "Machine"), id("machineId", "Machine id")],
      ...[text("designation", "Designation"), text("name", "Name"), text("location", "Where")],
    ],
  },
  {
    ...{
      name: "controllers",
      title: "Controllers",
      about: "Controllers",
      page: "/installed",
      model: "controller",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[id(), ...site(), text("designation", "Designation"), text("model", "Model")],
      ...[
        number("firmware", "Firmware level"),
        text("firmwareRaw", "Firmware as read"),
        text("hardware", "Hardware"),
      ],
      ...[
        number("memoryPercent", "Memory used", "%"),
        number("axisLimit", "Axes at most"),
        date("readOn", "Read on"),
      ],
      ...[text("leadsLine.code", "Leads line"), text("evidence", "Evidence")],
    ],
  },
  {
    ...{
      name: "networks",
      title: "Networks",
      about: "Motion networks",
      page: "/installed",
      model: "network",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        text("name", "Name"),
        text("kind", "Kind"),
        number("profileFamily", "Profile family"),
      ],
    ],
  },
  {
    ...{
      name: "axis-records",
      title: "Axes as recorded",
      about: "Axes with cables, travel and homing",
      page: "/axes",
      model: "axis",
    },
    under: (where) => ({ machine: { line: { site: where } } }),
    filters: { line: onMachineOfLine },
    columns: [
      ...[id(), ...site("machine.line.site"), ...line("machine.line"), text("machine.code", "Machine")],
      ...[
        id("machineId", "Machine id"),
        text("code", "Axis"),
        text("name", "Name"),
        number("inServiceYear", "In service since"),
      ],
      ...[
        text("network.name", "Network"),
        id("networkId", "Network id"),
        number("nodeAddress", "Node address"),
      ],
      ...[
        number("ringOrder", "Place in the ring"),
        text("feedback", "Feedback"),
        number("countsPerRev", "Counts a turn"),
      ],
      ...[number("motorRevs", "Motor turns"), number("loadRevs", "Load turns")],
      ...[number("unitsPerLoadRev", "Travel a load turn"), text("travelUnit", "Unit of travel")],
      ...[text("powerCable", "Power cable"), number("powerCableLength", "Power cable length", "m")],
      ...[yesNo("powerCableInChain", "Power cable in a chain"), text("feedbackCable", "Feedback cable")],
      ...[
        number("feedbackCableLength", "Feedback cable length", "m"),
        yesNo("feedbackCableInChain", "Feedback cable in a chain"),
      ],
      ...[
        number("travel", "Travel"),
        number("hardLow", "Hard end, low"),
        number("hardHigh", "Hard end, high"),
      ],
      ...[number("softLow", "Soft end, low"), number("softHigh", "Soft end, high"), text("homing", "Homing")],
      ...[number("homeOffset", "Home offset"), text("evidence", "Evidence")],
    ],
  },
  {
    ...{
      name: "places",
      title: "Places of units",
      about: "Places that hold one item each",
      page: "/installed",
      model: "position",
    },
    under: (where) => ({ machine: { line: { site: where } } }),
    filters: { line: onMachineOfLine },
    columns: [
      ...[id(), ...line("machine.line"), text("machine.code", "Machine"), id("machineId", "Machine id")],
      ...[
        text("designation", "Designation"),
        text("itemClass", "Class"),
        ...part(),
        text("axis.code", "Axis"),
      ],
      ...[
        id("axisId", "Axis id"),
        text("panel.designation", "Panel"),
        id("panelId", "Panel id"),
        text("evidence", "Evidence"),
      ],
    ],
  },
  {
    ...{
      name: "units",
      title: "Units",
      about: "Units by serial number, of your sites' places",
      page: "/installed",
      model: "unit",
    },
    under: (where) => ({ placements: { some: { position: { machine: { line: { site: where } } } } } }),
    columns: [
      ...[
        id(),
        ...part(),
        text("serial", "Serial"),
        text("revision", "Revision"),
        number("madeYear", "Made in"),
      ],
    ],
  },
  {
    ...{
      name: "stays",
      title: "Stays of units",
      about: "Where each unit was, from when to when",
      page: "/installed",
      model: "placement",
    },
    under: (where) => ({ position: { machine: { line: { site: where } } } }),
    columns: [
      ...[id(), ...line("position.machine.line"), text("position.machine.code", "Machine")],
      ...[text("position.designation", "Place"), id("positionId", "Place id"), ...part("unit.part")],
      ...[
        text("unit.serial", "Serial"),
        id("unitId", "Unit id"),
        date("fromOn", "From"),
        date("untilOn", "Until"),
      ],
    ],
  },
  {
    ...{
      name: "copies",
      title: "Copies of controllers",
      about: "Kept copies of programs",
      page: "/installed",
      model: "backup",
    },
    under: (where) => ({ controller: { site: where } }),
    columns: [
      ...[id(), ...site("controller.site"), text("controller.designation", "Controller")],
      ...[
        id("controllerId", "Controller id"),
        text("kind", "Kind"),
        date("takenOn", "Taken on"),
        text("keptAt", "Kept at"),
      ],
      ...[date("verifiedOn", "Put back and ran on"), yesNo("sourceAvailable", "Source can be edited")],
    ],
  },
  {
    ...{
      name: "contacts",
      title: "Whom to call",
      about: "Numbers to call, by function",
      page: "/installed",
      model: "contact",
    },
    under: (where) => ({ site: where }),
    columns: [
      ...[
        id(),
        ...site(),
        ...line(),
        text("role", "Function"),
        text("phone", "Number"),
        text("hours", "When"),
      ],
      text("note", "Note"),
    ],
  },
];
