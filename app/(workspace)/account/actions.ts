"use server";

import { z } from "zod";
import { action } from "@/lib/access/action";
import { dropCalendarFeed, makeCalendarFeed } from "@/lib/data/calendarFeed";
import { askDigest, setDigest } from "@/lib/data/digest";
import { setReportWish } from "@/lib/data/reportWish";
import * as schema from "@/lib/schema/digest";
import * as report from "@/lib/schema/report";

const nothing = z.strictObject({});

export const makeMyCalendar = action({ needs: "read", input: nothing, run: makeCalendarFeed });
export const dropMyCalendar = action({ needs: "read", input: nothing, run: dropCalendarFeed });
export const setMyDigest = action({ needs: "read", input: schema.setDigest, run: setDigest });
export const askMyDigest = action({ needs: "read", input: nothing, run: askDigest });
export const setMyReportWish = action({ needs: "read", input: report.setReportWish, run: setReportWish });
