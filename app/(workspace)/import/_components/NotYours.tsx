import { PageHeader } from "@/app/_ui/PageHeader";

/** What those see whose role does not load registers. */
export function NotYours() {
  return (
    <PageHeader
      title="Load registers"
      lead="Registers are loaded by planners and engineers. Your role reads what they loaded; ask an administrator of Ebbline if that should change."
    />
  );
}
