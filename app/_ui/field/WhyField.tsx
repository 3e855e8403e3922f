import { TextField } from "@/app/_ui/field/TextField";

/** Asks why somebody changes something; the answer stands beside the change for whoever asks later. */
export function WhyField({ error }: { readonly error?: string | undefined }) {
  return (
    <TextField
      label="Why"
      name="why"
      hint="Stands beside this change for whoever asks later."
      maxLength={500}
      autoComplete="off"
      error={error}
    />
  );
}
