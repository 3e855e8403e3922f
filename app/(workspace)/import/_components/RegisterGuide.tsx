import { LinkButton } from "@/app/_ui/LinkButton";
import { REGISTERS } from "@/lib/intake/registers";
import { LOADING_ORDER } from "@/lib/view/importPattern";
import type { ImportHead } from "@/lib/view/importView";
import { count } from "@/lib/view/number";
import { RegisterFields } from "./RegisterFields";

/** What each register holds, what it cannot do without, and a file to start from. */
export function RegisterGuide({ files }: { readonly files: readonly ImportHead[] }) {
  return (
    <ol className="space-y-6">
      {LOADING_ORDER.map(({ key, why }, place) => {
        const register = REGISTERS[key];
        const needed = register.fields.filter((field) => field.required);
        const loaded = files.filter((file) => file.register === key && file.state === "committed").length;
        return (
          <li key={key} className="border-rule border-b pb-5 last:border-b-0">
            <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-2">
              <h3 className="font-semibold text-lg">
                {place + 1}. {register.label}
              </h3>
              <LinkButton href={`/api/import/pattern?register=${key}`} download>
                Pattern of {register.label.toLowerCase()} (.csv)
              </LinkButton>
            </div>
            <p className="measure">{register.description}</p>
            <p className="measure text-ink-2">
              {why} {loaded > 0 ? `${count(loaded, "file")} loaded.` : "No file of yours is loaded yet."}
            </p>
            <p className="mt-2 text-sm">
              <span className="label">Needed columns</span>{" "}
              <code className="bg-shade px-1.5 py-0.5">{needed.map((field) => field.label).join(";")}</code>
            </p>
            <RegisterFields register={register} />
          </li>
        );
      })}
    </ol>
  );
}
