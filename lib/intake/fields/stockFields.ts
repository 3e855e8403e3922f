import { defineChoice, defineField, type Field } from "@/lib/intake/field";

const STATE_CHOICES = [
  defineChoice(
    "usable",
    "Usable",
    "ok|good|new|repaired|tested|refurbished|neu|brauchbar|verwendbar|geprüft|repariert|überholt|nowy|sprawny|dobry|naprawiony|po naprawie|ny|användbar|reparerad|nuevo|utilizable|bueno|reparado|neuf|réparé|bon|nuovo|riparato|buono",
  ),
  defineChoice(
    "unproven",
    "Unproven",
    "untested|not tested|used|ungeprüft|gebraucht|niesprawdzony|używany|oprovad|otestad|begagnad|sin probar|usado",
  ),
  defineChoice(
    "wrong_revision",
    "Wrong revision",
    "wrong level|falscher stand|falsche revision|zła rewizja|niewłaściwa rewizja|fel revision|revisión incorrecta|revisión equivocada",
  ),
  defineChoice(
    "on_hold",
    "On hold",
    "hold|quality hold|blocked|gesperrt|sperrbestand|wstrzymany|zablokowany|spärrad|spärrat|bloqueado|retenido",
  ),
  defineChoice(
    "reserved",
    "Reserved",
    // After "~": somebody else's pieces lie on the shelf and are nobody's to use.
    "res|reserviert|zarezerwowany|rezerwacja|reserverad|reservado|réservé|riservato~customer-owned|customer owned|customer's property|consignment|kundeneigentum|beistellung|konsignation|własność klienta|konsygnacja|kundägd|konsignationslager|propiedad del cliente|consignación|propriété du client|proprietà del cliente",
  ),
  defineChoice(
    "removed_untested",
    "Removed, untested",
    "removed|ausgebaut|ausgebaut, ungeprüft|zdemontowany|wymontowany|demonterad|desmontado|retirado",
  ),
  defineChoice(
    "beyond_repair",
    "Beyond repair",
    "scrap|defective|faulty|broken|defekt|schrott|irreparabel|uszkodzony|złom|trasig|skrot|defectuoso|averiado|chatarra",
  ),
] as const;

/** Fields of a storeroom's stock export. */
export const STOCK_FIELDS: readonly Field[] = [
  defineField({
    key: "siteCode",
    label: "Site",
    kind: "code",
    required: true,
    synonyms: "site code|plant|plant code|werk|standort|zakład|fabryka|anläggning|fabrik|planta|sitio|centro",
    example: "OST",
  }),
  defineField({
    key: "bin",
    label: "Bin",
    kind: "code",
    required: true,
    synonyms:
      "storage loc|storage location|location|shelf|lagerort|lagerplatz|fach|regał|miejsce składowania|lokalizacja|lagerplats|hylla|fack|ubicación|estante|almacén",
    example: "R2-04",
  }),
  defineField({
    key: "maker",
    label: "Maker",
    kind: "text",
    synonyms: "manufacturer|brand|hersteller|producent|tillverkare|fabricante|marca",
    example: "Tarnholt Motion",
  }),
  defineField({
    key: "partNumber",
    label: "Part number",
    kind: "partNumber",
    synonyms:
      "part no|pn|mfr pn|manufacturer part number|maker's number|bestellnummer|artikelnummer|herstellernummer|typ|nr części|numer części|nr katalogowy|artikelnr|tillverkarens nr|número de parte|referencia|código fabricante",
    example: "TM-HR-020-B1",
  }),
  defineField({
    key: "storeroomNumber",
    label: "Storeroom's own number",
    kind: "code",
    synonyms:
      "material no|material number|material|materialnummer|materialnr|indeks|indeks materiałowy|nr materiału|förrådsnummer|número de material|código interno",
    example: "100045871",
  }),
  defineField({
    key: "revision",
    label: "Revision",
    kind: "code",
    synonyms: "rev|hardware level|series|hardwarestand|stand|serie|rewizja|seria|revisión",
    example: "B1",
  }),
  defineField({
    key: "description",
    label: "Description",
    kind: "text",
    synonyms:
      "short text|text|kurztext|bezeichnung|beschreibung|opis|nazwa|benämning|beskrivning|descripción|texto breve",
    example: "Ring-fibre drive, size 020",
  }),
  defineField({
    key: "quantity",
    label: "Quantity",
    kind: "quantity",
    unit: "pieces",
    min: 0,
    max: 100_000,
    synonyms:
      "qty|on hand|stock|count|bestand|menge|anzahl|ilość|stan|stan magazynowy|liczba|antal|saldo|cantidad|existencias|cant",
    example: "4",
  }),
  defineField({
    key: "state",
    label: "State",
    kind: "choice",
    choices: STATE_CHOICES,
    synonyms:
      "condition|status|valuation type|zustand|bewertungsart|stan techniczny|skick|tillstånd|estado|condición",
    example: "Usable",
  }),
  defineField({
    key: "lastPoweredOn",
    label: "Last powered on",
    kind: "date",
    synonyms:
      "last powered|last power-up|powered on|zuletzt bestromt|letzte bestromung|ostatnio zasilany|ostatnie zasilenie|senast spänningssatt|última energización|último encendido",
    example: "2025-11-10",
  }),
  defineField({
    key: "countedOn",
    label: "Counted on",
    kind: "date",
    synonyms:
      "count date|stocktake|stock date|last count|gezählt am|inventurdatum|inventur|data inwentaryzacji|policzono|inventerad|inventeringsdatum|contado el|fecha de inventario|fecha de conteo",
    example: "2026-10-02",
  }),
  defineField({
    key: "reservedFor",
    label: "Reserved for",
    kind: "text",
    synonyms:
      "reservation|project|reserviert für|projekt|zarezerwowano dla|reserverad för|reservado para|proyecto",
    example: "KAR-02 retrofit",
  }),
  defineField({
    key: "note",
    label: "Note",
    kind: "text",
    synonyms:
      "notes|comment|remark|remarks|bemerkung|kommentar|anmerkung|uwagi|uwaga|komentarz|anteckning|anmärkning|nota|notas|comentario|observaciones",
    example: "box opened",
  }),
];
