import { defineField } from "@/lib/intake/field";

/** The site a row stands at. */
export const SITE_FIELD = defineField({
  key: "siteCode",
  label: "Site",
  kind: "code",
  required: true,
  synonyms:
    "site code|plant|plant code|factory|werk|standort|zakład|fabryka|anläggning|fabrik|planta|sitio|centro",
  example: "VEL",
});

/** The line a row is about, where it may be about a whole site. */
export const LINE_OR_SITE_FIELD = defineField({
  key: "lineCode",
  label: "Line",
  kind: "code",
  synonyms:
    "line code|line no|production line|linie|linien-nr|liniencode|linia|kod linii|linje|linjekod|línea|código de línea",
  example: "VEL-01",
});

/** Words beside the figures. */
export const NOTE_FIELD = defineField({
  key: "note",
  label: "Note",
  kind: "text",
  synonyms: "remark|remarks|comment|bemerkung|notiz|uwagi|uwaga|anmärkning|observaciones|nota",
  example: "",
});
