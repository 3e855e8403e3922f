import { escaped } from "@/lib/reports/table/xmlText";

const HEAD = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;
const SHEETS = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** Formats of a workbook's cells, each kept once; 0 is plain. */
export class SheetStyles {
  /** Style of the heads. */
  readonly head = 1;
  readonly #formats = new Map<string, number>();

  /** Number of the style with a format such as `0.0%`. */
  of(format: string): number {
    const known = this.#formats.get(format);
    if (known !== undefined) return known;
    const style = this.#formats.size + 2;
    this.#formats.set(format, style);
    return style;
  }

  xml(): string {
    const formats = [...this.#formats.keys()].map((code, at) => ({ code, id: 164 + at }));
    const list = formats.map(({ code, id }) => `<numFmt numFmtId="${id}" formatCode="${escaped(code)}"/>`);
    const cells = [
      '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>',
      '<xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/>',
      ...formats.map(
        ({ id }) =>
          `<xf numFmtId="${id}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>`,
      ),
    ];
    return `${HEAD}<styleSheet xmlns="${SHEETS}">${list.length === 0 ? "" : `<numFmts count="${list.length}">${list.join("")}</numFmts>`}<fonts count="2"><font><sz val="11"/><name val="Arial"/></font><font><b/><sz val="11"/><name val="Arial"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="${cells.length}">${cells.join("")}</cellXfs></styleSheet>`;
  }
}

const numbers = (sheets: number) => Array.from({ length: sheets }, (_, at) => at + 1);

/** The list of sheets, all with the list's title. */
export function workbookXml(title: string, sheets: number): string {
  const name = title.replace(/[\\/?*[\]:]/g, " ").slice(0, 26);
  const list = numbers(sheets).map(
    (number) =>
      `<sheet name="${escaped(number === 1 ? name : `${name} ${number}`)}" sheetId="${number}" r:id="rId${number}"/>`,
  );
  return `${HEAD}<workbook xmlns="${SHEETS}" xmlns:r="${OFFICE}"><sheets>${list.join("")}</sheets></workbook>`;
}

export function workbookRelations(sheets: number): string {
  const list = numbers(sheets).map(
    (number) =>
      `<Relationship Id="rId${number}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${number}.xml"/>`,
  );
  const styles = `<Relationship Id="rId${sheets + 1}" Type="${OFFICE}/styles" Target="styles.xml"/>`;
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${list.join("")}${styles}</Relationships>`;
}

export const relations = `${HEAD}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`;

export function contentTypes(sheets: number): string {
  const list = numbers(sheets).map(
    (number) =>
      `<Override PartName="/xl/worksheets/sheet${number}.xml" ContentType="${TYPE}.worksheet+xml"/>`,
  );
  return `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${TYPE}.styles+xml"/>${list.join("")}</Types>`;
}
