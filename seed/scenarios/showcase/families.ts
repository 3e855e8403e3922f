import type { ItemClass } from "@/lib/risk/evaluation";
import { seedId } from "@/seed/seedId";
import type { FamilyRow } from "@/seed/tables";

export interface FamilySpec {
  readonly key: string;
  readonly maker: string;
  readonly name: string;
  readonly itemClass: ItemClass;
  readonly description: string;
  /** Letters its serial numbers begin with. */
  readonly mark: string;
  /** Removals a unit-year the events are drawn from. */
  readonly rate: number;
}

const TABLE = `
HR;Tarnholt Motion;Heron R;drive;Fibre-ring drive;HR;0.041
OK;Brindlewick;Oak;drive;Fibre-ring drive;OK;0.050
HE;Tarnholt Motion;Heron E;drive;Ethernet drive, successor of Heron R;HE;0.018
EL;Brindlewick;Elm;drive;Ethernet drive;EL;0.022
BI;Corvane;Birch;drive;Analogue drive, ±10 V;BI;0.060
LA;Corvane;Larch;drive;Pulse-input drive;LA;0.020
WR;Duskvale;Wren;motor;Servo motor with resolver;WR;0.0222
FI;Duskvale;Finch;motor;Servo motor with digital feedback;FN;0.0222
RO;Duskvale;Robin;motor;Servo motor with battery-backed absolute feedback;RB;0.0222
S3;Mossgate;Slate 3;controller;Controller, fibre ring only, firmware up to 18;S3;0.028
S5;Mossgate;Slate 5;controller;Controller, fibre ring, and Ethernet from firmware 24;S5;0.028
S7;Mossgate;Slate 7;controller;Controller, Ethernet, firmware from 27;S7;0.028
PB;Mossgate;Pebble;io;I/O rack on the old bus, reached through the Slate 3 and Slate 5 bus card only;PE;0.012
PN;Mossgate;Pebble N;io;I/O rack on Ethernet;PN;0.012
L8;Quillfeather;Lumen 8;hmi;Operator panel, unsupported operating system;L8;0.0654
LX;Quillfeather;Lumen 12;hmi;Operator panel;LX;0.0654
BK;Pebbleton;Brook 24;power_supply;Power supply 24 V;BK;0.022
GL;Fernsby;Glim;converter;Fibre converter of a ring;GL;0.038
LR;Mossgate;Link R;network_card;Bus card for the old I/O bus;LR;0.01
`;

/** The families of the invented makers. */
export const FAMILIES: readonly FamilySpec[] = TABLE.trim()
  .split("\n")
  .map((text) => {
    const [key = "", maker = "", name = "", itemClass, description = "", mark = "", rate] = text.split(";");
    return { key, maker, name, itemClass: itemClass as ItemClass, description, mark, rate: Number(rate) };
  });

/** Removals a unit-year of drives nobody has identified. */
export const UNKNOWN_DRIVE_RATE = 0.05;

export const familyId = (key: string): string => seedId("Family", key);

export function familyRows(): FamilyRow[] {
  return FAMILIES.map(({ key, maker, name, itemClass, description }) => ({
    id: familyId(key),
    maker,
    name,
    itemClass,
    description,
  }));
}
