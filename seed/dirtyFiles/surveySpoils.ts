import type { Spoil } from "@/seed/dirtyFiles/spoil";

const letterO = (number: string) => number.replace("0", "O");

/** What spoils an axis survey: spellings of nameplates, units, stand-ins, classes under other names. */
export const SURVEY_SPOILS: readonly Spoil[] = [
  { row: 0, field: "drivePart", problem: 1, write: (number) => number.toLowerCase().replaceAll("-", " ") },
  { row: 1, field: "drivePart", problem: 1, write: (number) => number.replaceAll("-", "–") },
  { row: 2, field: "driveSerial", problem: 20, write: () => "n/a", means: null },
  { row: 3, field: "axisInServiceYear", problem: 20, write: () => "9999", means: null },
  { row: 4, field: "motorSerial", problem: 20, write: () => "XXX", means: null },
  { row: 5, field: "powerCableLength", problem: 7, write: (metres) => `${metres} m` },
  { row: 6, field: "nodeAddress", problem: 11, write: () => "#REF!", means: null },
  {
    ...{ row: 7, field: "motorPart", problem: 1, write: letterO },
    means: (number) => ({ looksLike: number }),
  },
  { row: 8, field: "ringOrder", problem: 11, write: () => "=ROW()-2", refuses: true },
];
