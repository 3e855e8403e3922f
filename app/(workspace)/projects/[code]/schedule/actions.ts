"use server";

import { action } from "@/lib/access/action";
import { addGateItem, decideGate, setGateItem } from "@/lib/data/gateChange";
import { markTask, replan } from "@/lib/data/scheduleChange";
import { addTask, changeTask, removeTask } from "@/lib/data/taskChange";
import * as schema from "@/lib/schema/schedule";

export const keepThisPlan = action({ needs: "project:write", input: schema.replan, run: replan });
export const markThisTask = action({ needs: "project:write", input: schema.markTask, run: markTask });
export const addThisTask = action({ needs: "project:write", input: schema.addTask, run: addTask });
export const changeThisTask = action({ needs: "project:write", input: schema.changeTask, run: changeTask });
export const removeThisTask = action({ needs: "project:write", input: schema.removeTask, run: removeTask });
export const setThisGateItem = action({
  needs: "project:write",
  input: schema.setGateItem,
  run: setGateItem,
});
export const decideThisGate = action({ needs: "project:write", input: schema.decideGate, run: decideGate });
export const addThisGateItem = action({
  needs: "project:write",
  input: schema.addGateItem,
  run: addGateItem,
});
