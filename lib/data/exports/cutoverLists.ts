import "server-only";
import {
  date,
  id,
  instant,
  money,
  number,
  part,
  project,
  share,
  text,
  yesNo,
} from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

const ofProject = { page: "/projects", under: (where: object) => ({ project: { site: where } }) };
const ofCutover = {
  page: "/projects",
  under: (where: object) => ({ cutover: { project: { site: where } } }),
};

/** From the old system to the new, and what is left to do. */
export const cutoverLists: readonly RecordList[] = [
  {
    ...{
      ...ofProject,
      name: "cutovers",
      title: "Cutovers",
      about: "From the old system to the new",
      model: "cutover",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("name", "Cutover"),
        instant("startsAt", "Starts at"),
        instant("productionAt", "Production at"),
      ],
      ...[
        number("restoreHours", "Putting back takes", "h"),
        number("marginHours", "Margin", "h"),
        date("restoreTestedOn", "Putting back tried on"),
        text("restoreTestedBy", "Tried by"),
      ],
    ],
  },
  {
    ...{
      ...ofCutover,
      name: "cutover-steps",
      title: "Steps of cutovers",
      about: "Who does what from which hour",
      model: "cutoverStep",
    },
    columns: [
      ...[
        id(),
        ...project("cutover.project"),
        text("cutover.name", "Cutover"),
        id("cutoverId", "Cutover id"),
        text("title", "Step"),
      ],
      ...[
        number("afterHours", "Starts after", "h"),
        number("hours", "Takes", "h"),
        text("who", "Who"),
        text("phone", "Number"),
        text("needs", "Needs"),
      ],
      ...[instant("startedAt", "Started at"), instant("endedAt", "Ended at")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "open-points",
      title: "Open points",
      about: "What is left to do",
      model: "openPoint",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("what", "What"),
        text("owner", "Who"),
        date("raisedOn", "Raised on"),
        date("dueOn", "Due on"),
      ],
      ...[yesNo("blocks", "Stands in the way"), date("doneOn", "Done on"), text("doneBy", "Done by")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "project-risks",
      title: "Risks of projects",
      about: "What may go wrong",
      model: "projectRisk",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("what", "What"),
        share("chanceLow", "Chance, low"),
        share("chanceHigh", "Chance, high"),
      ],
      ...[
        money("effectLow", "Effect, low", "project.currency"),
        money("effectHigh", "Effect, high", "project.currency"),
      ],
      ...[
        text("project.currency", "Currency"),
        text("action", "Action"),
        text("owner", "Who"),
        text("state", "State"),
      ],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "removed-units",
      title: "Units taken out",
      about: "What projects took out",
      model: "removedUnit",
    },
    columns: [
      ...[
        id(),
        ...project(),
        ...part(),
        text("position.designation", "Place"),
        id("positionId", "Place id"),
        text("serial", "Serial"),
      ],
      ...[
        text("revision", "Revision"),
        date("removedOn", "Taken out on"),
        text("result", "Result"),
        text("testedBy", "Tested by"),
        date("testedOn", "Tested on"),
        text("bin", "Bin"),
      ],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "fitted-units",
      title: "Units put in",
      about: "What projects put in",
      model: "fittedUnit",
    },
    columns: [
      ...[
        id(),
        ...project(),
        ...part(),
        text("position.designation", "Place"),
        id("positionId", "Place id"),
        text("serial", "Serial"),
      ],
      ...[
        text("revision", "Revision"),
        text("firmware", "Firmware"),
        yesNo("added", "New place"),
        date("fittedOn", "Put in on"),
      ],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "closings",
      title: "Closings of projects",
      about: "Closings and checks of benefit",
      model: "projectClosing",
    },
    columns: [
      ...[
        id(),
        ...project(),
        date("closedOn", "Closed on"),
        text("closedBy", "Closed by"),
        date("checkOn", "Check on"),
        date("checkedOn", "Checked on"),
      ],
      ...[text("checkedBy", "Checked by"), text("conclusion", "Conclusion")],
    ],
  },
];
