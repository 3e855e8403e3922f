import { encodeText } from "@/lib/intake/textEncoding";
import type { ProblemNumber } from "@/seed/dirtyFiles/answerKey";

/** A maker's notice as it comes, with what it says. */
export interface DirtyNotice {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly problems: readonly ProblemNumber[];
  readonly maker: string;
  /** Numbers of parts on record that the notice ends. */
  readonly parts: readonly string[];
  readonly successor: string;
  /** Each day with the readings it may have; a person settles where there is more than one. */
  readonly dates: readonly { readonly what: string; readonly on: string }[];
}

const ENGLISH = `TARNHOLT MOTION   –   Supply bulletin no. 2026-14\r
Order no. 100045871 (nameplate TM-HR-020), all hardware levels incl. ser. C\r
\r
We give notice that the ring-fibre drives tm hr 010, TMHR020, TM–HR–040 and TM-HR-080-B1 leave our programme.\r
Last order date: 30 April 2027. Last ship date: 29.10.2027. Repair until Q4 2031.\r
Replaced by TM-HE-010.\r
`;

const GERMAN = `Mossgate\tMitteilung Nr. 2025-19\r
Abkündigung der Steuerung MG-SL-500 (Bestellnr. 7,0045E+07, Stand C)\r
\r
Letzte Bestellung bis 30.6.27; letzte Lieferung 31. Dezember 2027. Reparatur bis 2033-06-30.\r
Nachfolger: MG-SL-700\r
`;

/**
 * Two makers' notices: parts in several spellings and with revisions, order numbers beside nameplates, dates in
 * many shapes, two languages, two encodings.
 */
export function dirtyNotices(): DirtyNotice[] {
  return [
    {
      ...{ name: "tarnholt-2026-14.txt", bytes: encodeText(ENGLISH, "windows-1252") },
      ...{ problems: [1, 2, 3, 6, 9], maker: "Tarnholt Motion", successor: "TM-HE-010" },
      parts: ["TM-HR-010", "TM-HR-020", "TM-HR-040", "TM-HR-080"],
      dates: [
        { what: "lastOrderOn", on: "2027-04-30" },
        { what: "lastShipOn", on: "2027-10-29" },
        { what: "repairUntilOn", on: "2031-10-01" },
      ],
    },
    {
      ...{ name: "mossgate-2025-19.txt", bytes: encodeText(GERMAN, "windows-1252") },
      ...{ problems: [2, 3, 4, 6, 9, 18], maker: "Mossgate", successor: "MG-SL-700" },
      parts: ["MG-SL-500"],
      dates: [
        { what: "lastOrderOn", on: "2027-06-30" },
        { what: "lastShipOn", on: "2027-12-31" },
        { what: "repairUntilOn", on: "2033-06-30" },
      ],
    },
  ];
}
