import { defineChoice, defineField, type Field } from "@/lib/intake/field";
import { SITE_FIELD } from "@/lib/intake/fields/placeFields";

const KIND_CHOICES = [
  defineChoice(
    "program",
    "Program",
    "project|controller program|programm|projekt|projekt programu|styrprogram|programa|proyecto",
  ),
  defineChoice(
    "parameters",
    "Drive parameters",
    "parameters|parameter set|parameter|antriebsparameter|parametry|parametry napędu|parametrar|parámetros",
  ),
  defineChoice(
    "operator_panel",
    "Operator panel",
    "hmi|panel|bedienpanel|bediengerät|panel operatorski|operatörspanel|panel de operador",
  ),
] as const;

/** Fields of the register of copies: what was copied of a controller, when, where it lies, whether it was tried. */
export const BACKUP_FIELDS: readonly Field[] = [
  SITE_FIELD,
  defineField({
    key: "controllerDesignation",
    label: "Controller",
    kind: "code",
    required: true,
    synonyms:
      "controller designation|controller code|plc|steuerung|sps|sterownik|kod sterownika|styrsystem|controlador",
    example: "VEL-01-K1",
  }),
  defineField({
    key: "kind",
    label: "What was copied",
    kind: "choice",
    required: true,
    choices: KIND_CHOICES,
    synonyms: "kind|kind of copy|what|inhalt|was|rodzaj|zawartość|innehåll|typ|contenido|tipo",
    example: "Program",
  }),
  defineField({
    key: "takenOn",
    label: "Taken on",
    kind: "date",
    required: true,
    synonyms: "backup date|date|taken|gesichert am|datum|data kopii|wykonano|tagen den|fecha de copia|fecha",
    example: "2026-09-14",
  }),
  defineField({
    key: "keptAt",
    label: "Where it lies",
    kind: "text",
    required: true,
    synonyms:
      "location|kept at|folder|medium|ablageort|ablage|miejsce|lokalizacja|plats|förvaras|ubicación|lugar",
    example: "site archive, folder programs",
  }),
  defineField({
    key: "verifiedOn",
    label: "Put back and ran on",
    kind: "date",
    synonyms:
      "restored on|restore tested|verified on|zurückgespielt am|rückspielung getestet|odtworzono|testowano|återläst den|restaurado el|probado el",
    example: "2026-09-20",
  }),
  defineField({
    key: "sourceAvailable",
    label: "Source available",
    kind: "boolean",
    synonyms:
      "source|editable|quelle vorhanden|quellprojekt|źródło dostępne|edytowalny|källa finns|fuente disponible",
    example: "yes",
  }),
];
