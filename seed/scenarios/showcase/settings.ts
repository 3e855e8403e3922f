import { D0 } from "@/seed/scenarios/showcase/moment";
import type { SettingRow } from "@/seed/tables";

/** Firmware a Slate 5 needs for drives on Ethernet; every Slate 7 is above it and no Slate 3 reaches it. */
const FIRMWARE_FLOOR = 24;

export function settingRows(): SettingRow[] {
  return [
    { key: "demo", value: JSON.stringify(true) },
    { key: "asOf", value: JSON.stringify(D0) },
    { key: "minimumFirmware", value: JSON.stringify(FIRMWARE_FLOOR) },
  ];
}
