import type { ImportColumn } from "@/lib/view/importPreview";

export interface FieldChoice {
  readonly key: string;
  readonly label: string;
  readonly required: boolean;
}

interface Props {
  readonly columns: readonly ImportColumn[];
  readonly fields: readonly FieldChoice[];
  readonly mapping: Readonly<Record<string, string | null>>;
  readonly onChoose: (header: string, field: string | null) => void;
}

/** How sure the proposal is, in words: the likeness of the header to the words a field is known by. */
function likeness({ suggested, score }: ImportColumn, fields: readonly FieldChoice[]): string {
  if (suggested === null) return "like no field";
  const label = fields.find((field) => field.key === suggested)?.label ?? suggested;
  return score >= 0.98 ? `${label}, by name` : `${label}, ${Math.round(score * 100)} % alike`;
}

/** Each column of the file with sample values and the field it goes into; a field taken elsewhere cannot be chosen. */
export function MappingTable({ columns, fields, mapping, onChoose }: Props) {
  const takenBy = new Map(Object.entries(mapping).map(([header, field]) => [field, header]));
  return (
    <div className="table-frame">
      <table className="table">
        <caption className="sr-only">Columns of the file and the fields they go into</caption>
        <thead>
          <tr>
            {["Column of the file", "Sample values", "Goes into", "Looks like"].map((head) => (
              <th key={head} scope="col" className="label" data-priority={head === "Looks like" ? 2 : 1}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => (
            <tr key={column.header}>
              <th scope="row">{column.header}</th>
              <td className="text-ink-2">{column.samples.join(" · ") || "empty"}</td>
              <td>
                <select
                  className="input min-w-48"
                  aria-label={`Field for column ${column.header}`}
                  value={mapping[column.header] ?? ""}
                  onChange={(event) => onChoose(column.header, event.target.value || null)}
                >
                  <option value="">Left out</option>
                  {fields.map(({ key, label, required }) => {
                    const other = takenBy.get(key);
                    const taken = other !== undefined && other !== column.header;
                    return (
                      <option key={key} value={key} disabled={taken}>
                        {label}
                        {required ? " (needed)" : ""}
                        {taken ? ` – from ${other}` : ""}
                      </option>
                    );
                  })}
                </select>
              </td>
              <td className="whitespace-nowrap" data-priority={2}>
                {likeness(column, fields)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
