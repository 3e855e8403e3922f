import { D0 } from "@/seed/scenarios/showcase/moment";
import type { SettingRow } from "@/seed/tables";

export function settingRows(): SettingRow[] {
  return [
    { key: "demo", value: JSON.stringify(true) },
    { key: "asOf", value: JSON.stringify(D0) },
  ];
}
