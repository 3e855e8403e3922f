import "server-only";
import { date, id, number, project, text, yesNo } from "@/lib/data/exports/columns";
import type { RecordList } from "@/lib/data/exports/recordList";

const ofProject = { page: "/projects", under: (where: object) => ({ project: { site: where } }) };

/** How projects are planned, and how far their axes are. */
export const scheduleLists: readonly RecordList[] = [
  {
    ...{
      ...ofProject,
      name: "tasks",
      title: "Tasks",
      about: "Work of projects in days",
      model: "projectTask",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("code", "Task"),
        text("name", "Name"),
        number("days", "Working days"),
        yesNo("inWindow", "In a shutdown"),
      ],
      ...[
        text("who", "Who"),
        number("crews", "Crews"),
        number("engineers", "Engineers"),
        date("notBefore", "Not before"),
      ],
      ...[
        date("plannedStart", "Planned start"),
        date("plannedFinish", "Planned finish"),
        date("baselineStart", "First plan, start"),
      ],
      ...[
        date("baselineFinish", "First plan, finish"),
        date("startedOn", "Started on"),
        date("finishedOn", "Finished on"),
        id("milestoneId", "Milestone id"),
      ],
    ],
  },
  {
    ...{
      name: "task-links",
      title: "Tasks before tasks",
      about: "What waits for what",
      page: "/projects",
      model: "taskLink",
    },
    key: ["taskId", "afterId"],
    under: (where) => ({ task: { project: { site: where } } }),
    columns: [
      ...[
        ...project("task.project"),
        text("task.code", "Task"),
        id("taskId", "Task id"),
        text("prior.code", "After"),
        id("afterId", "After id"),
      ],
      number("lag", "Days between"),
    ],
  },
  {
    ...{
      ...ofProject,
      name: "replans",
      title: "Plans put in force",
      about: "New plans and why",
      model: "replan",
    },
    columns: [
      ...[
        id(),
        ...project(),
        number("number", "Number"),
        date("madeOn", "Made on"),
        text("madeBy", "Made by"),
        text("reason", "Reason"),
      ],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "gates",
      title: "Gates",
      about: "Decisions that a project may go on",
      model: "projectGate",
    },
    columns: [
      ...[
        id(),
        ...project(),
        number("sequence", "Number"),
        text("name", "Gate"),
        text("decision", "Decision"),
        date("decidedOn", "Decided on"),
      ],
      ...[text("decidedBy", "Decided by"), text("reason", "Reason"), text("task.code", "Guards task")],
    ],
  },
  {
    ...{
      name: "gate-items",
      title: "Points of gates",
      about: "What has to be true",
      page: "/projects",
      model: "gateItem",
    },
    under: (where) => ({ gate: { project: { site: where } } }),
    columns: [
      ...[
        id(),
        ...project("gate.project"),
        text("gate.name", "Gate"),
        id("gateId", "Gate id"),
        text("text", "What"),
        text("who", "Who"),
      ],
      ...[date("doneOn", "Done on"), text("doneBy", "Done by")],
    ],
  },
  {
    ...{
      ...ofProject,
      name: "axis-steps",
      title: "Steps of axes",
      about: "Steps axes have done",
      model: "axisStep",
    },
    columns: [
      ...[
        id(),
        ...project(),
        text("axis.machine.code", "Machine"),
        text("axis.code", "Axis"),
        id("axisId", "Axis id"),
        text("step", "Step"),
      ],
      ...[date("doneOn", "Done on"), text("doneBy", "Done by"), text("recordedBy", "Recorded by")],
    ],
  },
  {
    ...{
      name: "axis-checks",
      title: "Checks of axes",
      about: "Values before and after a retrofit",
      page: "/projects",
      model: "axisEntry",
    },
    under: (where) => ({ record: { project: { site: where } } }),
    columns: [
      ...[
        id(),
        ...project("record.project"),
        text("record.axis.machine.code", "Machine"),
        text("record.axis.code", "Axis"),
        id("record.axisId", "Axis id"),
      ],
      ...[
        text("checkId", "Check"),
        number("asFound", "As found"),
        number("limit", "Limit"),
        text("asLeft", "As left"),
        yesNo("confirmed", "Confirmed"),
      ],
      ...[
        text("notApplicable", "Does not apply because"),
        text("instrument", "Instrument"),
        text("by", "By"),
        text("witness", "Witness"),
        date("on", "On"),
      ],
    ],
  },
];
