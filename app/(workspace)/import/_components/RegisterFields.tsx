import { findField, type Register } from "@/lib/intake/registers";

/** All columns a register knows, folded away until asked for. */
export function RegisterFields({ register }: { readonly register: Register }) {
  const labels = (keys: readonly string[]) => keys.map((key) => findField(register, key)?.label ?? key);
  return (
    <details className="disclosure mt-2">
      <summary className="font-semibold text-accent">
        All {register.fields.length} columns of {register.label.toLowerCase()}
      </summary>
      <p className="measure my-2 text-ink-2 text-sm">
        Headers may be in English, German, Polish, Swedish or Spanish, and in any order; further columns are
        left out. An empty cell leaves what is stored as it is.
        {register.oneOf.map((keys) => ` Each row needs ${labels(keys).join(" or ")}.`).join("")}
      </p>
      <table className="table">
        <caption className="sr-only">Columns of {register.label.toLowerCase()}</caption>
        <thead>
          <tr>
            {["Column", "Needed", "Unit", "Example", "Words taken"].map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {register.fields.map((field) => (
            <tr key={field.key}>
              <th scope="row">{field.label}</th>
              <td>{field.required ? "in each row" : "may be empty"}</td>
              <td>{field.unit ?? ""}</td>
              <td>{field.example}</td>
              <td>{field.choices.map((choice) => choice.label).join(", ")}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
