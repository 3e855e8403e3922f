import { defineChoice, defineField, type Field } from "@/lib/intake/field";

const MOST_METRES = 1000;
const FARTHEST = 1_000_000;

const HOMING_CHOICES = [
  defineChoice(
    "to_switch",
    "To a switch",
    "switch|home switch|reference switch|referenzschalter|nocken|wyłącznik|czujnik|brytare|interruptor",
  ),
  defineChoice(
    "to_marker",
    "To a marker",
    "marker|index|index mark|zero mark|nullmarke|nullimpuls|znacznik|impuls zerowy|nollpuls|marca|marca cero",
  ),
  defineChoice(
    "to_switch_then_marker",
    "To a switch, then a marker",
    "switch and marker|switch then marker|schalter und nullmarke|wyłącznik i znacznik|brytare och nollpuls|interruptor y marca",
  ),
  defineChoice(
    "to_end_stop",
    "To an end stop",
    "end stop|hard stop|endanschlag|festanschlag|zderzak|ogranicznik|ändstopp|anslag|tope|tope mecánico",
  ),
  defineChoice(
    "absolute_encoder",
    "Absolute encoder",
    "absolute|absolutgeber|absolutwertgeber|enkoder absolutny|absolutgivare|encóder absoluto|absoluto",
  ),
  defineChoice("none", "None needed", "none|not homed|keine|ohne|brak|ingen|ninguna|sin referencia"),
] as const;

/** The fields of one cable: its type, length and whether it runs in a moving chain. */
function cableFields(
  which: "power" | "feedback",
  words: Readonly<Record<"type" | "length" | "chain", string>>,
) {
  const label = which === "power" ? "Power cable" : "Feedback cable";
  return [
    defineField({
      ...{ key: `${which}Cable`, label, kind: "text", synonyms: words.type },
      example: which === "power" ? "4G2.5 shielded" : "5x2x0.25 shielded",
    }),
    defineField({
      ...{ key: `${which}CableLength`, label: `${label} length`, kind: "decimal", unit: "m" },
      ...{ min: 0, max: MOST_METRES, synonyms: words.length, example: "12.5" },
    }),
    defineField({
      ...{ key: `${which}CableInChain`, label: `${label} in a moving chain`, kind: "boolean" },
      ...{ synonyms: words.chain, example: "yes" },
    }),
  ];
}

/** A place along the travel. */
const along = (said: Readonly<Record<"key" | "label" | "synonyms" | "example", string>>) =>
  defineField({ ...said, kind: "decimal", unit: "travel units", min: -FARTHEST, max: FARTHEST });

/** Fields of an axis beside its drive and motor: panel, cables, travel with its ends, homing, day of the survey. */
export const AXIS_FACT_FIELDS: readonly Field[] = [
  defineField({
    ...{ key: "panel", label: "Panel", kind: "code", example: "+A1" },
    synonyms:
      "cabinet|enclosure|schaltschrank|schrank|szafa|szafa sterownicza|apparatskåp|skåp|tablero|armario",
  }),
  ...cableFields("power", {
    type: "motor cable|power cable type|motorleitung|motorkabel|leistungskabel|kabel silnika|kabel mocy|kraftkabel|cable de potencia|cable de motor",
    length:
      "motor cable length|power cable m|länge motorleitung|motorleitung länge|długość kabla silnika|motorkabel längd|longitud cable de potencia",
    chain:
      "power cable chain|motor cable in chain|motorleitung in schleppkette|kabel silnika w prowadniku|motorkabel i kedja|cable de potencia en cadena",
  }),
  ...cableFields("feedback", {
    type: "encoder cable|feedback cable type|geberleitung|geberkabel|kabel enkodera|givarkabel|cable de encóder|cable de realimentación",
    length:
      "encoder cable length|feedback cable m|länge geberleitung|geberleitung länge|długość kabla enkodera|givarkabel längd|longitud cable de encóder",
    chain:
      "feedback cable chain|encoder cable in chain|geberleitung in schleppkette|kabel enkodera w prowadniku|givarkabel i kedja|cable de encóder en cadena",
  }),
  defineField({
    ...{ key: "travel", label: "Travel", kind: "decimal", unit: "travel units", min: 0, max: FARTHEST },
    synonyms: "stroke|whole travel|verfahrweg|hub|skok|droga całkowita|slaglängd|carrera|recorrido",
    example: "350",
  }),
  along({
    ...{ key: "hardLow", label: "Hardware end, low", example: "-5" },
    synonyms:
      "hardware limit low|hw limit low|hardware-endlage min|krańcówka min|hårdvarugräns min|límite hardware min",
  }),
  along({
    ...{ key: "hardHigh", label: "Hardware end, high", example: "355" },
    synonyms:
      "hardware limit high|hw limit high|hardware-endlage max|krańcówka max|hårdvarugräns max|límite hardware max",
  }),
  along({
    ...{ key: "softLow", label: "Software end, low", example: "0" },
    synonyms:
      "software limit low|sw limit low|software-endlage min|limit programowy min|mjukvarugräns min|límite software min",
  }),
  along({
    ...{ key: "softHigh", label: "Software end, high", example: "350" },
    synonyms:
      "software limit high|sw limit high|software-endlage max|limit programowy max|mjukvarugräns max|límite software max",
  }),
  defineField({
    ...{ key: "homing", label: "Homing", kind: "choice", choices: HOMING_CHOICES, example: "To a switch" },
    synonyms:
      "homing method|reference run|referenzfahrt|referenzierung|bazowanie|metoda bazowania|referenskörning|hemkörning|búsqueda de referencia|referenciado",
  }),
  along({
    ...{ key: "homeOffset", label: "Home offset", example: "12.5" },
    synonyms:
      "home position|offset|referenzpunktverschiebung|referenzoffset|przesunięcie bazy|referensförskjutning|desplazamiento de referencia",
  }),
  defineField({
    ...{ key: "surveyedOn", label: "Surveyed on", kind: "date", example: "2026-09-14" },
    synonyms:
      "survey date|measured on|aufgenommen am|aufmaß am|zmierzono|data pomiaru|uppmätt|inventerad den|medido el|fecha de levantamiento",
  }),
];
