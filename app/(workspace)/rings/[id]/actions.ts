"use server";

import { action } from "@/lib/access/action";
import { changeNetworkPlate } from "@/lib/data/plateChange";
import * as plate from "@/lib/schema/plate";

export const saveNetworkPlate = action({
  needs: "line:write",
  input: plate.changeNetworkPlate,
  run: changeNetworkPlate,
});
