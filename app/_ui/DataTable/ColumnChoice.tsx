import type { RefObject } from "react";
import { Menu, MenuItem, Popover } from "react-aria-components";

interface ColumnChoiceProps {
  readonly trigger: RefObject<HTMLButtonElement | null>;
  /** Columns that may be left out. */
  readonly columns: readonly { readonly key: string; readonly header: string }[];
  readonly shown: Readonly<Record<string, boolean>>;
  readonly onChange: (keys: readonly string[]) => void;
  readonly onClose: () => void;
}

/** The list of columns with those shown ticked; stays open while several are chosen. */
export function ColumnChoice({ trigger, columns, shown, onChange, onClose }: ColumnChoiceProps) {
  return (
    <Popover
      className="popover"
      placement="bottom end"
      triggerRef={trigger}
      isOpen
      onOpenChange={(open) => (open ? undefined : onClose())}
    >
      <Menu
        aria-label="Columns shown"
        autoFocus="first"
        className="py-1 outline-none"
        selectionMode="multiple"
        selectedKeys={columns.filter((column) => shown[column.key]).map((column) => column.key)}
        onSelectionChange={(keys) =>
          onChange(keys === "all" ? columns.map((column) => column.key) : [...keys].map(String))
        }
      >
        {columns.map((column) => (
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
  );
}
