"use server";

import { action } from "@/lib/access/action";
import { issueReport } from "@/lib/data/reportIssue";
import * as schema from "@/lib/schema/report";

export const giveOutReport = action({
  needs: "report:issue",
  input: schema.issueReport,
  run: issueReport,
});
