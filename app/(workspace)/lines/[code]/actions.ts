"use server";

import { action } from "@/lib/access/action";
import { changeLine } from "@/lib/data/lineChange";
import { changeLineFigures } from "@/lib/schema/lineFigures";

export const saveLineFigures = action({ needs: "line:write", input: changeLineFigures, run: changeLine });
