import { FormMessage } from "@/app/_ui/FormMessage";

interface SecretOnceProps {
  readonly what: string | null;
  readonly secret: string | null;
}

/** A secret just made: shown here and never again. */
export function SecretOnce({ what, secret }: SecretOnceProps) {
  return (
    <FormMessage kind="done">
      {secret === null ? null : (
        <>
          {what}, shown this once: <code className="break-all">{secret}</code>
        </>
      )}
    </FormMessage>
  );
}
