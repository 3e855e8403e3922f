import { defineField, type Field } from "@/lib/intake/field";
import { LINE_OR_SITE_FIELD, NOTE_FIELD, SITE_FIELD } from "@/lib/intake/fields/placeFields";

/** Fields of the shutdown calendar: from when to when a line or a whole site stands still for work. */
export const WINDOW_FIELDS: readonly Field[] = [
  SITE_FIELD,
  LINE_OR_SITE_FIELD,
  defineField({
    key: "name",
    label: "Name",
    kind: "text",
    required: true,
    synonyms: "window|shutdown|stillstand|betriebsruhe|postój|przerwa|stopp|driftstopp|paro|parada",
    example: "Summer shutdown 2027",
  }),
  defineField({
    key: "startsOn",
    label: "First day",
    kind: "date",
    required: true,
    synonyms: "starts on|start|from|beginn|von|od|początek|börjar|från|inicio|desde",
    example: "2027-08-02",
  }),
  defineField({
    key: "endsOn",
    label: "Last day",
    kind: "date",
    required: true,
    synonyms: "ends on|end|until|to|ende|bis|do|koniec|slutar|till|fin|hasta",
    example: "2027-08-20",
  }),
  defineField({
    key: "usableHours",
    label: "Usable hours",
    kind: "decimal",
    unit: "h",
    min: 0,
    max: 9000,
    synonyms:
      "hours|working hours|nutzbare stunden|stunden|godziny|godziny robocze|användbara timmar|horas útiles|horas",
    example: "140",
  }),
  { ...NOTE_FIELD, example: "14 usable days of 10 hours" },
];
