import type { RandomStream } from "@/lib/kernel/random";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { SiteCode } from "@/seed/scenarios/showcase/sites";
import type { EventKind } from "@/seed/tables";

type Language = "de" | "pl" | "sv" | "en" | "es";

const LANGUAGE: Readonly<Record<SiteCode, Language>> = {
  VEL: "de",
  OST: "pl",
  KAR: "sv",
  PIN: "en",
  TAD: "es",
  THO: "en",
};

const ITEM: Readonly<Record<Language, Readonly<Record<ItemClass, string>>>> = {
  de: {
    drive: "Umrichter",
    motor: "Motor",
    controller: "Steuerung",
    power_supply: "Netzteil",
    io: "E/A-Station",
    hmi: "Bedienpult",
    converter: "LWL-Wandler",
    network_card: "Buskarte",
  },
  pl: {
    drive: "Napęd",
    motor: "Silnik",
    controller: "Sterownik",
    power_supply: "Zasilacz",
    io: "Wyspa we/wy",
    hmi: "Panel",
    converter: "Konwerter światłowodu",
    network_card: "Karta magistrali",
  },
  sv: {
    drive: "Drivdon",
    motor: "Motor",
    controller: "Styrsystem",
    power_supply: "Nätaggregat",
    io: "I/O-enhet",
    hmi: "Panel",
    converter: "Fiberomvandlare",
    network_card: "Busskort",
  },
  en: {
    drive: "Drive",
    motor: "Motor",
    controller: "Controller",
    power_supply: "Power supply",
    io: "I/O rack",
    hmi: "Operator panel",
    converter: "Fibre converter",
    network_card: "Bus card",
  },
  es: {
    drive: "Variador",
    motor: "Motor",
    controller: "Controlador",
    power_supply: "Fuente",
    io: "Estación de E/S",
    hmi: "Panel",
    converter: "Convertidor de fibra",
    network_card: "Tarjeta de bus",
  },
};

const HAPPENED: Readonly<Record<Language, Readonly<Record<EventKind, readonly string[]>>>> = {
  de: {
    failure: [
      "Überstrom, getauscht",
      "Zwischenkreis defekt, getauscht",
      "läuft nicht an, getauscht",
      "Ausfall nach Warmlauf, ersetzt",
    ],
    no_fault_found: ["getauscht, in der Werkstatt kein Fehler", "auf Verdacht getauscht, kein Befund"],
    removal: ["getauscht", "ausgebaut, ersetzt"],
  },
  pl: {
    failure: [
      "przeciążenie, wymieniono",
      "uszkodzony, wymieniono",
      "nie startuje, wymieniono",
      "błąd po rozgrzaniu, wymiana",
    ],
    no_fault_found: ["wymieniono, na warsztacie bez usterki", "wymiana na próbę, brak usterki"],
    removal: ["wymieniono", "zdemontowano, wstawiono inny"],
  },
  sv: {
    failure: ["överström, bytt", "startar inte, bytt", "trasig, ersatt", "fel efter varmkörning, bytt"],
    no_fault_found: ["bytt, inget fel i verkstaden", "bytt på misstanke, inget fel"],
    removal: ["bytt", "demonterad, ersatt"],
  },
  en: {
    failure: [
      "overcurrent, replaced",
      "dead on power-up, replaced",
      "trips when warm, replaced",
      "no output, replaced",
    ],
    no_fault_found: ["replaced, bench found no fault", "swapped on suspicion, no fault found"],
    removal: ["replaced", "taken out, other one fitted"],
  },
  es: {
    failure: [
      "sobrecorriente, se cambió",
      "no arranca, se cambió",
      "dañado, se reemplazó",
      "falla en caliente, se cambió",
    ],
    no_fault_found: ["se cambió, en taller sin falla", "cambio por sospecha, sin falla"],
    removal: ["se cambió", "retirado, se puso otro"],
  },
};

export interface TextMatter {
  readonly site: SiteCode;
  readonly itemClass: ItemClass;
  readonly kind: EventKind;
  readonly designation: string;
}

/** What a fitter writes on the work order, in the language of the site. */
export function describeEvent(
  { site, itemClass, kind, designation }: TextMatter,
  chance: RandomStream,
): string {
  const language = LANGUAGE[site];
  return `${ITEM[language][itemClass]} ${designation}: ${chance.pick(HAPPENED[language][kind])}`;
}
