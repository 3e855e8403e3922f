import { defineField, type Field } from "@/lib/intake/field";
import { LINE_OR_SITE_FIELD, NOTE_FIELD, SITE_FIELD } from "@/lib/intake/fields/placeFields";

/** Fields of the call list: functions with their number. There is no field for a person's name, and none is read. */
export const CONTACT_FIELDS: readonly Field[] = [
  SITE_FIELD,
  LINE_OR_SITE_FIELD,
  defineField({
    key: "role",
    label: "Function",
    kind: "text",
    required: true,
    synonyms: "role|duty|position|funktion|rolle|funkcja|rola|stanowisko|befattning|función|puesto",
    example: "Electrician on call",
  }),
  defineField({
    key: "phone",
    label: "Number",
    kind: "code",
    required: true,
    synonyms: "phone|telephone|call|telefon|rufnummer|nr telefonu|telefonnummer|teléfono",
    example: "+49 30 23125099",
  }),
  defineField({
    key: "hours",
    label: "When somebody answers",
    kind: "text",
    required: true,
    synonyms:
      "hours|reachable|availability|erreichbar|zeiten|godziny|dostępność|tider|tillgänglig|horario|disponible",
    example: "day and night",
  }),
  { ...NOTE_FIELD, example: "has the programming laptop" },
];
