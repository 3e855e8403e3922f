"use server";

import { action } from "@/lib/access/action";
import { keepNotice, withdrawNotice } from "@/lib/data/noticeChange";
import { previewNotice, proposeNotice } from "@/lib/data/noticeEffect";
import { noticeFields, noticeSource, recordNotice, takeNoticeBack } from "@/lib/schema/notice";

export const readThisNotice = action({ needs: "register:import", input: noticeSource, run: proposeNotice });
export const lookOverNotice = action({ needs: "register:import", input: noticeFields, run: previewNotice });
export const keepThisNotice = action({ needs: "register:import", input: recordNotice, run: keepNotice });
export const takeThisNoticeBack = action({
  needs: "register:import",
  input: takeNoticeBack,
  run: withdrawNotice,
});
