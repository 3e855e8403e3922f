import { defineField, type Field } from "@/lib/intake/field";
import { ITEM_CLASS_CHOICES } from "@/lib/intake/fields/itemClassChoices";

/** Fields of makers' bulletins and the purchasing list: supply dates, price, lead time, repair. */
export const LIFECYCLE_FIELDS: readonly Field[] = [
  defineField({
    key: "maker",
    label: "Maker",
    kind: "text",
    required: true,
    synonyms: "manufacturer|brand|hersteller|producent|tillverkare|fabricante|marca",
    example: "Tarnholt Motion",
  }),
  defineField({
    key: "family",
    label: "Family",
    kind: "text",
    synonyms:
      "product family|series|range|part or family|produktfamilie|baureihe|familie|rodzina|seria|produktfamilj|familj|familia|gama",
    example: "Heron R",
  }),
  defineField({
    key: "partNumber",
    label: "Part number",
    kind: "partNumber",
    synonyms:
      "part|part no|pn|bestellnummer|artikelnummer|nr części|numer części|artikelnr|número de parte|referencia",
    example: "TM-HR-020",
  }),
  defineField({
    key: "description",
    label: "Description",
    kind: "text",
    synonyms: "short text|bezeichnung|beschreibung|opis|benämning|beskrivning|descripción",
    example: "Ring-fibre drive, size 020",
  }),
  defineField({
    key: "itemClass",
    label: "Class of item",
    kind: "choice",
    choices: ITEM_CLASS_CHOICES,
    synonyms:
      "item class|class|category|kind|kategorie|geräteart|kategoria|rodzaj|klass|kategori|clase|categoría",
    example: "Drive",
  }),
  defineField({
    key: "noticeOn",
    label: "Notice given on",
    kind: "date",
    synonyms:
      "notice|notice date|abkündigung|abgekündigt am|data wypowiedzenia|ogłoszono|avisering|aviserad|aviso|fecha de aviso",
    example: "2026-10-30",
  }),
  defineField({
    key: "lastOrderOn",
    label: "Last order",
    kind: "date",
    synonyms:
      "last order date|last time buy|last buy|letzte bestellung|letzter bestelltermin|ostatnie zamówienie|sista beställning|sista beställningsdag|último pedido|última compra",
    example: "2027-04-30",
  }),
  defineField({
    key: "lastShipOn",
    label: "Last ship",
    kind: "date",
    synonyms:
      "last ship date|last delivery|letzte lieferung|letzter liefertermin|ostatnia dostawa|sista leverans|último envío|última entrega",
    example: "2027-10-29",
  }),
  defineField({
    key: "repairUntilOn",
    label: "Repair until",
    kind: "date",
    synonyms:
      "repair to|repair ends|service until|reparatur bis|naprawa do|naprawy do|reparation till|reparation t.o.m.|reparación hasta",
    example: "2031-12-31",
  }),
  defineField({
    key: "orderByOn",
    label: "Start the purchase by",
    kind: "date",
    synonyms:
      "order by|internal order by|intern bestellen bis|bestellen bis|zamówić do|beställ senast|pedir antes de|ordenar antes de",
    example: "2027-02-26",
  }),
  defineField({
    key: "successor",
    label: "Successor",
    kind: "partNumber",
    synonyms:
      "successor part|replacement|replaced by|nachfolger|ersatztyp|następca|zamiennik|efterträdare|ersätts av|sucesor|reemplazo|sustituto",
    example: "TM-HE-020",
  }),
  defineField({
    key: "leadWeeks",
    label: "Lead time",
    kind: "decimal",
    unit: "weeks",
    min: 0,
    max: 520,
    synonyms:
      "lead weeks|lead time|lead time weeks|lieferzeit|lieferzeit wochen|czas dostawy|czas dostawy tyg|leveranstid|leveranstid veckor|plazo|plazo de entrega|plazo semanas",
    example: "9",
  }),
  defineField({
    key: "leadWeeksP80",
    label: "Lead time, 4 of 5 orders within",
    kind: "decimal",
    unit: "weeks",
    min: 0,
    max: 520,
    synonyms: "lead weeks p80|lead time p80|p80|lieferzeit p80|czas dostawy p80|leveranstid p80|plazo p80",
    example: "16",
  }),
  defineField({
    key: "price",
    label: "Price",
    kind: "decimal",
    unit: "currency of the row",
    min: 0,
    max: 1_000_000_000,
    synonyms:
      "list price|unit price|preis|listenpreis|stückpreis|cena|cena katalogowa|pris|listpris|styckpris|precio|precio de lista|precio unitario",
    example: "2250.00",
  }),
  defineField({
    key: "currency",
    label: "Currency",
    kind: "code",
    synonyms: "curr|währung|waluta|valuta|moneda|divisa",
    example: "EUR",
  }),
  defineField({
    key: "pricedOn",
    label: "Price of",
    kind: "date",
    synonyms: "priced on|price date|preisstand|preis vom|data ceny|prisdatum|fecha de precio",
    example: "2026-06-01",
  }),
  defineField({
    key: "repairYield",
    label: "Repaired units that come back usable",
    kind: "percent",
    unit: "%",
    min: 0,
    max: 100,
    synonyms:
      "repair yield|yield|repair yield %|reparaturquote|reparaturausbeute|skuteczność naprawy|uzysk napraw|reparationsutbyte|rendimiento de reparación|éxito de reparación",
    example: "60",
  }),
  defineField({
    key: "repairTurnaroundDays",
    label: "Repair turn-around",
    kind: "integer",
    unit: "days",
    min: 0,
    max: 3650,
    synonyms:
      "repair turnaround days|repair days|turnaround|turnaround days|reparaturdauer|reparaturdauer tage|czas naprawy|czas naprawy dni|reparationstid|reparationstid dagar|días de reparación|tiempo de reparación",
    example: "35",
  }),
  defineField({
    key: "powerKw",
    label: "Rated power",
    kind: "decimal",
    unit: "kW",
    min: 0.001,
    max: 10_000,
    synonyms:
      "power|rated power kw|power kw|leistung|nennleistung|leistung kw|moc|moc znamionowa|effekt|märkeffekt|potencia|potencia nominal",
    example: "1.5",
  }),
  defineField({
    key: "profileFamily",
    label: "Profile family",
    kind: "integer",
    unit: "CPF of IEC 61784",
    min: 1,
    max: 99,
    synonyms: "cpf|communication profile family|profilfamilie|rodzina profili|profilfamilj|familia de perfil",
    example: "16",
  }),
  defineField({
    key: "source",
    label: "Source",
    kind: "text",
    required: true,
    synonyms: "bulletin|reference|quelle|herkunft|źródło|källa|fuente|origen",
    example: "Supply bulletin 2026-14",
  }),
  defineField({
    key: "checkedOn",
    label: "Checked on",
    kind: "date",
    required: true,
    synonyms:
      "checked|date checked|geprüft am|sprawdzono|data sprawdzenia|kontrollerad|kontrollerat den|revisado el|verificado el|fecha de revisión",
    example: "2026-11-02",
  }),
];
