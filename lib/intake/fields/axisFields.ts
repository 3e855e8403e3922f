import { defineChoice, defineField, type Field } from "@/lib/intake/field";
import { AXIS_FACT_FIELDS } from "@/lib/intake/fields/axisFactFields";
import { OTHER_ITEM_FIELDS } from "@/lib/intake/fields/otherItemFields";

const NETWORK_KIND_CHOICES = [
  defineChoice(
    "fibre_ring",
    "Fibre ring",
    "ring|fiber ring|fibre|fiber|lwl-ring|lwl|pierścień|pierścień światłowodowy|światłowód|fiberring|anillo|anillo de fibra|fibra",
  ),
  defineChoice("ethernet", "Ethernet", "eth|lan|industrial ethernet"),
  defineChoice("analogue", "Analogue", "analog|+/-10 v|±10 v|analogowy|analogowe|analógico|analógica"),
  defineChoice(
    "pulse",
    "Pulse input",
    "pulse|step/direction|puls|impuls|takt/richtung|impulsowy|impulsowe|impulsos|pulsos",
  ),
  defineChoice("unknown", "Unknown", "unbekannt|nieznany|nieznana|okänd|okänt|desconocido|desconocida"),
] as const;

/** Fields of the axis survey: an axis with its drive and motor, or one other item of a machine. */
export const AXIS_FIELDS: readonly Field[] = [
  defineField({
    key: "lineCode",
    label: "Line",
    kind: "code",
    required: true,
    synonyms:
      "line code|line no|production line|linie|linien-nr|liniencode|linia|kod linii|linje|linjekod|línea|código de línea",
    example: "VEL-01",
  }),
  defineField({
    key: "machineCode",
    label: "Machine",
    kind: "code",
    required: true,
    synonyms:
      "machine code|machine no|maschine|maschinen-nr|maszyna|nr maszyny|kod maszyny|maskin|maskinkod|máquina|código de máquina",
    example: "M01",
  }),
  defineField({
    key: "axisCode",
    label: "Axis",
    kind: "code",
    synonyms:
      "axis code|axis no|achse|achs-nr|achsnummer|oś|nr osi|kod osi|axel|axelkod|axelnr|eje|código de eje",
    example: "A03",
  }),
  defineField({
    key: "axisName",
    label: "Axis name",
    kind: "text",
    synonyms:
      "axis description|function|achsname|achsbezeichnung|funktion|nazwa osi|funkcja|axelnamn|nombre de eje|función",
    example: "Infeed",
  }),
  defineField({
    key: "axisInServiceYear",
    label: "Axis in service since",
    kind: "year",
    synonyms: "year|axis year|baujahr|rok|rok osi|år|axelår|año|año de eje",
    example: "2009",
  }),
  defineField({
    key: "networkName",
    label: "Network",
    kind: "code",
    synonyms:
      "network name|ring|ring name|netzwerk|netz|ringname|sieć|nazwa sieci|pierścień|nätverk|nätverksnamn|red|nombre de red|anillo",
    example: "VEL-01-R1",
  }),
  defineField({
    key: "networkKind",
    label: "Kind of network",
    kind: "choice",
    choices: NETWORK_KIND_CHOICES,
    synonyms:
      "network kind|network type|bus|bus type|netzart|netztyp|bustyp|rodzaj sieci|typ sieci|nätverkstyp|tipo de red|tipo de bus",
    example: "Fibre ring",
  }),
  defineField({
    key: "networkProfileFamily",
    label: "Profile family of network",
    kind: "integer",
    unit: "CPF of IEC 61784",
    min: 1,
    max: 99,
    synonyms: "cpf|profile family|cpf network|profilfamilie|rodzina profili|profilfamilj|familia de perfil",
    example: "16",
  }),
  defineField({
    key: "ringOrder",
    label: "Place in ring",
    kind: "integer",
    min: 1,
    max: 254,
    synonyms:
      "ring order|ring position|order in ring|ringposition|ringplatz|reihenfolge im ring|kolejność w pierścieniu|ringordning|plats i ring|orden en anillo|posición en anillo",
    example: "3",
  }),
  defineField({
    key: "nodeAddress",
    label: "Node address",
    kind: "integer",
    min: 0,
    max: 65_535,
    synonyms:
      "node|address|knoten|knotenadresse|adresse|teilnehmeradresse|adres węzła|węzeł|adres|nod|nodadress|adress|nodo|dirección|dirección de nodo",
    example: "12",
  }),
  defineField({
    key: "feedback",
    label: "Feedback",
    kind: "text",
    synonyms:
      "feedback type|encoder|geber|gebertyp|drehgeber|enkoder|sprzężenie|typ enkodera|givare|givartyp|återkoppling|encóder|realimentación",
    example: "resolver",
  }),
  defineField({
    key: "driveMaker",
    label: "Drive maker",
    kind: "text",
    synonyms:
      "drive manufacturer|manufacturer drive|maker drive|hersteller antrieb|umrichterhersteller|hersteller umrichter|producent napędu|drivtillverkare|tillverkare drift|fabricante del accionamiento|fabricante drive|fabricante variador",
    example: "Tarnholt Motion",
  }),
  defineField({
    key: "drivePart",
    label: "Drive part number",
    kind: "partNumber",
    synonyms:
      "drive pn|drive part no|drive type|drive|antrieb|umrichter|umrichter typ|umrichtertyp|antrieb bestellnummer|napęd|nr części napędu|typ napędu|drift artikelnr|drivdon|accionamiento|número de parte drive|variador",
    example: "TM-HR-020-B1",
  }),
  defineField({
    key: "driveRevision",
    label: "Drive revision",
    kind: "code",
    synonyms:
      "drive rev|rev|revision|hardware level|hardwarestand|revision antrieb|rewizja|rewizja napędu|revisión|revision drift",
    example: "B1",
  }),
  defineField({
    key: "driveSerial",
    label: "Drive serial number",
    kind: "code",
    synonyms:
      "drive serial|drive sn|drive s/n|seriennummer antrieb|seriennummer umrichter|nr seryjny napędu|serienummer drift|serie drive|número de serie drive|número de serie variador",
    example: "HR4410027",
  }),
  defineField({
    key: "motorMaker",
    label: "Motor maker",
    kind: "text",
    synonyms:
      "motor manufacturer|manufacturer motor|hersteller motor|motorhersteller|producent silnika|motortillverkare|tillverkare motor|fabricante del motor|fabricante motor",
    example: "Duskvale",
  }),
  defineField({
    key: "motorPart",
    label: "Motor part number",
    kind: "partNumber",
    synonyms:
      "motor pn|motor part no|motor type|motor|motortyp|motor bestellnummer|silnik|nr części silnika|typ silnika|motor artikelnr|número de parte motor|tipo de motor",
    example: "DV-WR-040",
  }),
  defineField({
    key: "motorSerial",
    label: "Motor serial number",
    kind: "code",
    synonyms:
      "motor serial|motor sn|motor s/n|seriennummer motor|nr seryjny silnika|serienummer motor|serie motor|número de serie motor",
    example: "WR2098811",
  }),
  defineField({
    key: "countsPerRev",
    label: "Counts per motor revolution",
    kind: "integer",
    min: 1,
    max: 2_147_483_647,
    synonyms:
      "counts per rev|counts/rev|increments per rev|inkremente pro umdrehung|inkremente/u|impulsy na obrót|pulser per varv|pulsos por vuelta|cuentas por vuelta",
    example: "1048576",
  }),
  defineField({
    key: "motorRevs",
    label: "Gear: motor revolutions",
    kind: "integer",
    min: 1,
    max: 1_000_000,
    synonyms: "motor revs|motor turns|gear motor|motorumdrehungen|obroty silnika|motorvarv|vueltas motor",
    example: "5",
  }),
  defineField({
    key: "loadRevs",
    label: "Gear: load revolutions",
    kind: "integer",
    min: 1,
    max: 1_000_000,
    synonyms:
      "load revs|load turns|gear load|lastumdrehungen|abtriebsumdrehungen|obroty obciążenia|lastvarv|vueltas carga",
    example: "1",
  }),
  defineField({
    key: "unitsPerLoadRev",
    label: "Travel per load revolution",
    kind: "decimal",
    unit: "travel units",
    min: 0,
    max: 1_000_000,
    synonyms:
      "units per load rev|units per rev|feed constant|vorschubkonstante|weg pro umdrehung|jednostki na obrót|droga na obrót|enheter per varv|unidades por vuelta",
    example: "360",
  }),
  defineField({
    key: "travelUnit",
    label: "Travel unit",
    kind: "text",
    synonyms: "unit|wegeinheit|einheit|jednostka|jednostka drogi|enhet|vägenhet|unidad|unidad de recorrido",
    example: "deg",
  }),
  ...AXIS_FACT_FIELDS,
  ...OTHER_ITEM_FIELDS,
];
