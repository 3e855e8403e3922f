import { defineField, type Field } from "@/lib/intake/field";
import { ITEM_CLASS_CHOICES } from "@/lib/intake/fields/itemClassChoices";

/** Fields of an axis survey's row that is no axis: a power supply, a rack, a panel, a converter, a card. */
export const OTHER_ITEM_FIELDS: readonly Field[] = [
  defineField({
    key: "itemClass",
    label: "Class of other item",
    kind: "choice",
    choices: ITEM_CLASS_CHOICES,
    synonyms: "item class|class|category|kategorie|geräteart|kategoria|rodzaj|klass|kategori|clase|categoría",
    example: "Power supply",
  }),
  defineField({
    key: "designation",
    label: "Designation of other item",
    kind: "code",
    synonyms:
      "designation|item designation|reference designation|bmk|betriebsmittelkennzeichen|kennzeichen|oznaczenie|beteckning|designación|identificación",
    example: "-G1",
  }),
  defineField({
    key: "itemMaker",
    label: "Maker of other item",
    kind: "text",
    synonyms: "item maker|manufacturer|maker|hersteller|producent|tillverkare|fabricante",
    example: "Pebbleton",
  }),
  defineField({
    key: "itemPart",
    label: "Part number of other item",
    kind: "partNumber",
    synonyms:
      "item part|part number|part no|bestellnummer|artikelnummer|nr części|numer części|artikelnr|número de parte|referencia",
    example: "PB-BK-240",
  }),
  defineField({
    key: "itemSerial",
    label: "Serial number of other item",
    kind: "code",
    synonyms:
      "item serial|serial|serial number|serial no|seriennummer|nr seryjny|numer seryjny|serienummer|número de serie",
    example: "BK004417",
  }),
];
