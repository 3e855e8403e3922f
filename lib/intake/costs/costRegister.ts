import { defineChoice, defineField } from "@/lib/intake/field";
import type { Register } from "@/lib/intake/registers";

/** Orders and invoices of a project as order books and ledgers export them, one a row. */
export const COST_REGISTER: Register = {
  label: "Orders and invoices",
  description: "Orders and paid invoices of one project, one a row.",
  fields: [
    defineField({
      key: "kind",
      label: "Kind",
      kind: "choice",
      required: true,
      choices: [
        defineChoice(
          "committed",
          "Ordered",
          "order|purchase order|po|committed|commitment|bestellung|bestellt|zamówienie|zamówiono|beställning|beställt|pedido|orden de compra",
        ),
        defineChoice(
          "actual",
          "Paid",
          "invoice|invoiced|actual|payment|rechnung|bezahlt|faktura|zapłacono|betald|factura|pagado",
        ),
      ],
      synonyms: "type|document type|entry type|art|belegart|rodzaj|typ|slag|tipo|clase de documento",
      example: "Ordered",
    }),
    defineField({
      key: "reference",
      label: "Number",
      kind: "code",
      required: true,
      synonyms:
        "document|document number|reference|ref|order number|invoice number|belegnummer|beleg|nummer|numer|numer dokumentu|verifikation|dokumentnummer|número|documento",
      example: "PO-26-2218",
    }),
    defineField({
      key: "spentOn",
      label: "Day",
      kind: "date",
      required: true,
      synonyms:
        "date|posting date|document date|datum|buchungsdatum|belegdatum|data|data księgowania|bokföringsdatum|fecha",
      example: "2026-11-06",
    }),
    defineField({
      key: "amount",
      label: "Amount",
      kind: "decimal",
      required: true,
      unit: "currency",
      min: 0.0001,
      max: 999_999_999_999,
      synonyms:
        "value|net amount|net|betrag|nettobetrag|wert|kwota|wartość|kwota netto|belopp|nettobelopp|importe|monto|valor",
      example: "610000.00",
    }),
    defineField({
      key: "currency",
      label: "Currency",
      kind: "code",
      synonyms: "curr|währung|waluta|valuta|moneda|divisa",
      example: "SEK",
    }),
    defineField({
      key: "text",
      label: "For",
      kind: "text",
      synonyms:
        "text|description|what for|purpose|beschreibung|verwendung|opis|tytuł|benämning|beskrivning|descripción|concepto",
      example: "11 motors with flanges",
    }),
    defineField({
      key: "costClass",
      label: "Class",
      kind: "choice",
      choices: [
        defineChoice(
          "drives",
          "Drives and motors",
          "drives|motors|hardware|material|antriebe|napędy|drivsystem|accionamientos",
        ),
        defineChoice(
          "controllers",
          "Controllers and network",
          "controllers|controls|network|steuerungen|sterowniki|styrsystem|controladores",
        ),
        defineChoice(
          "engineering",
          "Engineering and programs",
          "engineering|programming|survey|konstruktion|planung|projektowanie|konstruktion och program|ingeniería",
        ),
        defineChoice(
          "installation",
          "Installation and commissioning",
          "installation|commissioning|labour|montage|montaż|installation och driftsättning|instalación",
        ),
        defineChoice(
          "training",
          "Training and first spares",
          "training|spares|schulung|szkolenie|utbildning|formación",
        ),
        defineChoice("contingency", "Contingency", "reserve|rezerwa|reserv|reserva"),
      ],
      synonyms:
        "cost class|category|cost category|kostenart|kategorie|kategoria|kostnadsslag|kategori|categoría",
      example: "Drives and motors",
    }),
    defineField({
      key: "orderReference",
      label: "For order",
      kind: "code",
      synonyms:
        "order|purchase order|po number|po|order reference|bestellnummer|bestellung|zamówienie|numer zamówienia|inköpsorder|ordernummer|pedido|número de pedido",
      example: "PO-26-1871",
    }),
  ],
  oneOf: [],
  together: [],
  ascending: [],
  ordered: [],
  identity: ["kind", "reference"],
};
