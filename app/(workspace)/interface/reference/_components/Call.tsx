import { RowTable } from "@/app/_ui/RowTable";
import type { ReferenceEntry, ReferenceField } from "@/lib/interface/reference";

/** One call: what it takes, what it answers, an example. */
export function Call({ entry }: { readonly entry: ReferenceEntry }) {
  const { name, method, path, title, text, needs, parameters, body, answer, example } = entry;
  return (
    <details id={name} className="disclosure border-rule-2 border-b">
      <summary className="flex flex-wrap items-baseline gap-x-4 gap-y-1 py-2">
        <code className="font-semibold">
          {method} {path}
        </code>
        <span className="text-ink-2">{title}</span>
      </summary>
      <div className="grid gap-4 pb-6">
        <p className="measure">
          {text} Needs the right <code>{needs}</code>.
        </p>
        <pre className="whitespace-pre-wrap break-all border border-rule-2 p-3 text-sm">{example}</pre>
        <Fields title="Parameters" fields={parameters} />
        {body === "file" ? (
          <p>The body is the file as it is.</p>
        ) : (
          <Fields title="Body" fields={body ?? []} />
        )}
        <Fields title="Answer" fields={answer} />
      </div>
    </details>
  );
}

function Fields({ title, fields }: { readonly title: string; readonly fields: readonly ReferenceField[] }) {
  if (fields.length === 0) return null;
  return (
    <div>
      <h3 className="font-semibold">{title}</h3>
      <RowTable caption={title} heads={["Name", "Kind", "Meaning"]}>
        {fields.map(({ name, kind, text }) => (
          <tr key={name}>
            <td>
              <code>{name}</code>
            </td>
            <td>{kind}</td>
            <td>{text}</td>
          </tr>
        ))}
      </RowTable>
    </div>
  );
}
