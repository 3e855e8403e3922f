import type { MadeThing, Paged } from "@/lib/view/importView";
import { NextPage } from "./NextPage";

/** From the rows of a loaded file to what each made, page by page. */
export function MadeRows({ made: { shown, next } }: { readonly made: Omit<Paged<MadeThing>, "count"> }) {
  return (
    <details className="disclosure mt-4">
      <summary className="font-semibold text-accent">What each row made</summary>
      <table className="table mt-2 max-w-3xl">
        <caption className="sr-only">What each row made</caption>
        <thead>
          <tr>
            {["Row", "Kind", "Thing", "Deed"].map((head) => (
              <th key={head} scope="col" className="label">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ place, rowNumber, thing, name, kind }) => (
            <tr key={place}>
              <td>{rowNumber}</td>
              <td>{thing}</td>
              <td>{name}</td>
              <td>{kind}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <NextPage list="made" next={next}>
        Next rows
      </NextPage>
    </details>
  );
}
