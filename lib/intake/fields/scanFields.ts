import { defineField, type Field } from "@/lib/intake/field";
import { LINE_OR_SITE_FIELD, SITE_FIELD } from "@/lib/intake/fields/placeFields";

/** Fields of a network list: what a passive list of a motion network or of a controller saw, one device a row. */
export const SCAN_FIELDS: readonly Field[] = [
  { ...SITE_FIELD, required: false },
  LINE_OR_SITE_FIELD,
  defineField({
    key: "machineCode",
    label: "Machine",
    kind: "code",
    synonyms: "machine code|machine no|maschine|maschinen-nr|maszyna|kod maszyny|maskin|máquina",
    example: "M03",
  }),
  defineField({
    key: "controllerDesignation",
    label: "Controller",
    kind: "code",
    synonyms:
      "controller designation|controller code|read behind|master|plc|steuerung|sps|sterownik|styrsystem|controlador",
    example: "VEL-01-K1",
  }),
  defineField({
    key: "networkName",
    label: "Network",
    kind: "code",
    synonyms: "network name|ring|segment|bus|netz|netzwerk|ring-nr|sieć|pierścień|nätverk|red|anillo",
    example: "VEL-01-R1",
  }),
  defineField({
    key: "slot",
    label: "Slot",
    kind: "code",
    synonyms: "rack slot|module slot|steckplatz|gniazdo|plats i rack|ranura",
    example: "3",
  }),
  defineField({
    key: "address",
    label: "Address",
    kind: "code",
    required: true,
    synonyms:
      "node|node address|node id|station|station address|ip|ip address|mac|mac address|knoten|knotenadresse|teilnehmer|adresse|węzeł|adres|nod|adress|nodo|dirección",
    example: "7",
  }),
  defineField({
    key: "deviceName",
    label: "Device name",
    kind: "text",
    synonyms:
      "device|product name|name as found|host name|gerät|gerätename|urządzenie|nazwa urządzenia|enhet|dispositivo",
    example: "Servo drive",
  }),
  defineField({
    key: "maker",
    label: "Maker",
    kind: "text",
    synonyms: "vendor|vendor name|manufacturer|hersteller|producent|tillverkare|fabricante",
    example: "Tarnholt Motion",
  }),
  defineField({
    key: "partNumber",
    label: "Part number",
    kind: "partNumber",
    synonyms:
      "catalogue no|catalogue number|catalog number|order code|product code|type|bestellnummer|typ|numer katalogowy|artikelnummer|referencia",
    example: "TM-HR-020-B1",
  }),
  defineField({
    key: "firmware",
    label: "Firmware",
    kind: "firmware",
    synonyms:
      "firmware level|firmware version|fw|rev major.minor|software|softwarestand|wersja|mjukvara|versión",
    example: "20.011",
  }),
  defineField({
    key: "serial",
    label: "Serial number",
    kind: "code",
    synonyms: "serial|serial no|s/n|sn|seriennummer|numer seryjny|serienummer|número de serie",
    example: "HR20-04417",
  }),
  defineField({
    key: "status",
    label: "Status",
    kind: "text",
    synonyms: "state|device status|zustand|stan|tillstånd|estado",
    example: "running",
  }),
  defineField({
    key: "seenOn",
    label: "Seen at",
    kind: "dateTime",
    required: true,
    synonyms:
      "seen on|scan time|scanned at|scan date|time|timestamp|zeitpunkt|gelesen am|odczytano|avläst|leído el",
    example: "2026-11-12 14:20",
  }),
  defineField({
    key: "source",
    label: "Source",
    kind: "text",
    synonyms: "tool|list|read by|quelle|źródło|källa|fuente",
    example: "switch table",
  }),
];
