import { AsOfLink } from "@/app/_ui/AsOfLink";
import { RowTable } from "@/app/_ui/RowTable";
import { SaveLinks } from "@/app/_ui/SaveLinks";
import type { SavableList } from "@/lib/data/savedList";

/** Every list with its files. */
export function ListTable({ lists }: { readonly lists: readonly SavableList[] }) {
  return (
    <RowTable caption="Lists that can be saved" heads={["List", "Its rows", "Page", "Save as"]}>
      {lists.map(({ name, title, about, page }) => (
        <tr key={name}>
          <th scope="row">{title}</th>
          <td>{about}</td>
          <td>{page === "/export" ? "This one" : <AsOfLink href={page}>{pageWords(page)}</AsOfLink>}</td>
          <td>
            <SaveLinks name={name} title={title} />
          </td>
        </tr>
      ))}
    </RowTable>
  );
}

/** A page's address in words: `/plans/inputs` is `Plans, inputs`. */
const pageWords = (page: string) => page.charAt(1).toUpperCase() + page.slice(2).replaceAll("/", ", ");
