import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import type { Column } from "@/app/_ui/DataTable/column";

interface ColumnMenuProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly shown: Readonly<Record<string, boolean>>;
  readonly onChange: (keys: readonly string[] | null) => void;
}

/** Chooses the columns shown; the first column always stays. A choice also holds on a narrow screen. */
export function ColumnMenu<Row>({ columns, shown, onChange }: ColumnMenuProps<Row>) {
  const rest = columns.slice(1);
  return (
    <MenuTrigger>
      <Button className="button">Columns</Button>
      <Popover className="popover" placement="bottom end">
        <Menu
          aria-label="Columns shown"
          className="py-1 outline-none"
          selectionMode="multiple"
          selectedKeys={rest.filter((column) => shown[column.key]).map((column) => column.key)}
          onSelectionChange={(keys) =>
            onChange(keys === "all" ? rest.map((column) => column.key) : [...keys].map(String))
          }
        >
          {rest.map((column) => (
            <MenuItem key={column.key} id={column.key} className="option" textValue={column.header}>
              {({ isSelected }) => (
                <>
                  <span aria-hidden="true" className="inline-block w-6">
                    {isSelected ? "✓" : ""}
                  </span>
                  {column.header}
                </>
              )}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
