import { DateField } from "@/app/_ui/field/DateField";
import { TextField } from "@/app/_ui/field/TextField";

interface OutFieldsProps {
  readonly errorOf: (name: string) => string | undefined;
  readonly given?: { readonly repairer: string; readonly fault: string; readonly dueOn: string };
}

/** What is known of a unit while it is out. */
export function OutFields({ errorOf, given }: OutFieldsProps) {
  return (
    <>
      <TextField
        name="repairer"
        label="Repairer"
        maxLength={80}
        defaultValue={given?.repairer ?? ""}
        error={errorOf("repairer")}
      />
      <TextField
        name="fault"
        label="Fault reported"
        maxLength={300}
        defaultValue={given?.fault ?? ""}
        error={errorOf("fault")}
      />
      <DateField
        name="dueOn"
        label="Promised for"
        hint="Empty takes the usual days of the part."
        defaultValue={given?.dueOn ?? ""}
        error={errorOf("dueOn")}
      />
    </>
  );
}
