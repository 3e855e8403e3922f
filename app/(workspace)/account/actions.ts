"use server";

import { z } from "zod";
import { action } from "@/lib/access/action";
import { dropCalendarFeed, makeCalendarFeed } from "@/lib/data/calendarFeed";

const nothing = z.strictObject({});

export const makeMyCalendar = action({ needs: "read", input: nothing, run: makeCalendarFeed });
export const dropMyCalendar = action({ needs: "read", input: nothing, run: dropCalendarFeed });
