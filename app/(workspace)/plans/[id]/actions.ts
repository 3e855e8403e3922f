"use server";

import { action } from "@/lib/access/action";
import { fillBoard, pinLine, placeWay } from "@/lib/data/planBoardChange";
import { fillByRanking } from "@/lib/data/planBoardFill";
import { nextIssue, submitBoard } from "@/lib/data/planBoardIssue";
import { cancelSolve, startSolve } from "@/lib/data/solveRun";
import * as schema from "@/lib/schema/planBoard";
import * as solve from "@/lib/schema/solveRun";

const needs = "plan:write";

export const placeThisWay = action({ needs, input: schema.placeWay, run: placeWay });
export const fillThisBoard = action({ needs, input: schema.fillBoard, run: fillBoard });
export const fillThisByRanking = action({ needs, input: schema.whichBoard, run: fillByRanking });
export const pinThisLine = action({ needs, input: schema.pinLine, run: pinLine });
export const submitThisBoard = action({ needs, input: schema.whichBoard, run: submitBoard });
export const startNextIssue = action({ needs, input: schema.whichBoard, run: nextIssue });
export const startThisSolve = action({ needs, input: solve.startSolve, run: startSolve });
export const cancelThisSolve = action({ needs, input: solve.whichSolve, run: cancelSolve });
