"use server";

import { z } from "zod";
import { action } from "@/lib/access/action";
import { dropCalendarFeed, makeCalendarFeed } from "@/lib/data/calendarFeed";
import { askDigest, setDigest } from "@/lib/data/digest";
import { setReading } from "@/lib/data/reading";
import { setReportWish } from "@/lib/data/reportWish";
import { endOtherSessions, endSession } from "@/lib/data/sessions";
import * as schema from "@/lib/schema/digest";
import * as reading from "@/lib/schema/reading";
import * as report from "@/lib/schema/report";
import * as session from "@/lib/schema/session";

const nothing = z.strictObject({});

export const makeMyCalendar = action({ needs: "read", input: nothing, run: makeCalendarFeed });
export const dropMyCalendar = action({ needs: "read", input: nothing, run: dropCalendarFeed });
export const setMyDigest = action({ needs: "read", input: schema.setDigest, run: setDigest });
export const askMyDigest = action({ needs: "read", input: nothing, run: askDigest });
export const setMyReportWish = action({ needs: "read", input: report.setReportWish, run: setReportWish });
export const endMySession = action({
  needs: "read",
  inProject: true,
  input: session.endSession,
  run: endSession,
});
export const endMyOtherSessions = action({
  needs: "read",
  inProject: true,
  input: session.endOthers,
  run: endOtherSessions,
});
export const setMyReading = action({ needs: "read", input: reading.setReading, run: setReading });
