import { defineChoice, defineField, type Field } from "@/lib/intake/field";
import { ITEM_CLASS_CHOICES } from "@/lib/intake/fields/itemClassChoices";

const KIND_CHOICES = [
  defineChoice(
    "failure",
    "Failure",
    "breakdown|fault|defect|failed|ausfall|störung|defekt|awaria|uszkodzenie|usterka|fel|haveri|felutfall|falla|fallo|avería",
  ),
  defineChoice(
    "no_fault_found",
    "No fault found",
    "nff|no fault|kein fehler|kein fehler gefunden|ohne befund|brak usterki|nie stwierdzono usterki|inget fel|inget fel hittat|sin falla|sin fallo|sin avería",
  ),
  defineChoice(
    "removal",
    "Removal",
    "removed|replaced|exchange|swap|ausbau|getauscht|tausch|austausch|demontaż|wymiana|wymieniono|demontering|byte|utbytt|retiro|cambio|sustitución",
  ),
] as const;

/** Fields of work orders and stop logs. */
export const EVENT_FIELDS: readonly Field[] = [
  defineField({
    key: "siteCode",
    label: "Site",
    kind: "code",
    required: true,
    synonyms: "site code|plant|plant code|werk|standort|zakład|fabryka|anläggning|fabrik|planta|sitio|centro",
    example: "PIN",
  }),
  defineField({
    key: "lineCode",
    label: "Line",
    kind: "code",
    synonyms:
      "line code|line no|production line|linie|liniencode|linia|kod linii|linje|linjekod|línea|código de línea",
    example: "PIN-03",
  }),
  defineField({
    key: "machineCode",
    label: "Machine",
    kind: "code",
    synonyms:
      "machine code|machine no|equipment|functional location|functional loc|maschine|maschinen-nr|maszyna|nr maszyny|maskin|maskinkod|máquina|código de máquina",
    example: "M04",
  }),
  defineField({
    key: "position",
    label: "Axis or position",
    kind: "code",
    synonyms:
      "axis|position|designation|achse|platz|bmk|oś|pozycja|oznaczenie|axel|beteckning|eje|posición|designación",
    example: "A05",
  }),
  defineField({
    key: "maker",
    label: "Maker",
    kind: "text",
    synonyms: "manufacturer|brand|hersteller|producent|tillverkare|fabricante|marca",
    example: "Brindlewick",
  }),
  defineField({
    key: "partNumber",
    label: "Part number",
    kind: "partNumber",
    synonyms:
      "part no|pn|part|parts|bestellnummer|artikelnummer|teil|teilenummer|nr części|numer części|część|artikelnr|del|número de parte|referencia|pieza",
    example: "BW-OK-040-A2",
  }),
  defineField({
    key: "itemClass",
    label: "Class of item",
    kind: "choice",
    choices: ITEM_CLASS_CHOICES,
    synonyms:
      "item class|class|category|item|kategorie|geräteart|kategoria|rodzaj elementu|klass|kategori|clase|categoría",
    example: "Drive",
  }),
  defineField({
    key: "kind",
    label: "Kind of event",
    kind: "choice",
    choices: KIND_CHOICES,
    synonyms:
      "kind|event|type|finding|cause code|art|ereignis|ereignisart|befund|rodzaj|rodzaj zdarzenia|zdarzenie|typ|händelse|händelsetyp|tipo|evento|hallazgo",
    example: "Failure",
  }),
  defineField({
    key: "happenedAt",
    label: "Happened at",
    kind: "dateTime",
    required: true,
    synonyms:
      "date|time|start|started|reported|stop start|beginn|datum|gemeldet|zeitpunkt|początek|data|zgłoszono|tidpunkt|börjande|inicio|fecha|fecha y hora",
    example: "2026-08-11 14:20",
  }),
  defineField({
    key: "endedAt",
    label: "Ended at",
    kind: "endTime",
    synonyms:
      "end|ended|end time|stop end|back in operation|ende|stopp ende|störungsende|wieder in betrieb|koniec|koniec postoju|zakończono|slut|stopp slut|åter i drift|fin|fin de paro|fin d'arrêt|fine|fine fermo",
    example: "2026-08-11 17:50",
  }),
  defineField({
    key: "downtimeHours",
    label: "Stop",
    kind: "decimal",
    unit: "h",
    min: 0,
    max: 8760,
    synonyms:
      "downtime|downtime h|downtime hours|stop hours|duration|stillstand|stillstand h|stillstandszeit|ausfalldauer|dauer|postój|postój h|czas postoju|stopptid|stopptid h|stillestånd|paro|paro h|horas de paro|duración",
    example: "3.5",
  }),
  defineField({
    key: "waitingHours",
    label: "Of it waiting for an item",
    kind: "decimal",
    unit: "h",
    min: 0,
    max: 8760,
    synonyms:
      "waiting hours|waiting h|waiting|logistic delay|wait for part|wartezeit|wartezeit h|wartezeit auf teil|oczekiwanie|czas oczekiwania|oczekiwanie na część|väntetid|väntan på del|espera|horas de espera",
    example: "1.0",
  }),
  defineField({
    key: "spareAtHand",
    label: "Spare at hand",
    kind: "boolean",
    synonyms:
      "spare available|spare|had spare|ersatzteil vorhanden|ersatz vorhanden|część dostępna|zapas|część na miejscu|reservdel fanns|reservdel|repuesto disponible|refacción disponible",
    example: "yes",
  }),
  defineField({
    key: "source",
    label: "Source register",
    kind: "text",
    synonyms: "source|system|register|quelle|herkunft|źródło|rejestr|källa|fuente|origen",
    example: "work order",
  }),
  defineField({
    key: "reference",
    label: "Number in the source",
    kind: "code",
    required: true,
    synonyms:
      "reference|wo|work order|work order no|order|order no|auftrag|auftragsnummer|meldung|nr zlecenia|zlecenie|arbetsorder|ordernummer|ao|orden|orden de trabajo|ot|folio",
    example: "WO-418227",
  }),
  defineField({
    key: "text",
    label: "Text",
    kind: "text",
    synonyms:
      "short text|long text|description|comment|kurztext|langtext|beschreibung|bemerkung|opis|tekst|uwagi|beskrivning|kommentar|descripción|texto|comentario",
    example: "drive replaced, axis 5",
  }),
  defineField({
    key: "commonCause",
    label: "Common cause",
    kind: "text",
    synonyms:
      "cause|shared cause|cause group|gemeinsame ursache|ursache|wspólna przyczyna|przyczyna|gemensam orsak|orsak|causa común|causa",
    example: "cooling failure 2026-08",
  }),
  defineField({
    key: "setAside",
    label: "Set aside because",
    kind: "text",
    synonyms:
      "set aside|excluded because|not counted because|ausgeschlossen weil|nicht gezählt weil|wykluczono|pominięto|undantagen|räknas inte|excluido por|no cuenta por",
    example: "ends before it starts",
  }),
];
