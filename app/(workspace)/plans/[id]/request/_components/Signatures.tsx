import { SIGNING_ROLES } from "@/lib/view/requestWords";

/** Lines to sign on; functions, not names. */
export function Signatures() {
  return (
    <div className="signature-lines keep-together text-sm">
      {SIGNING_ROLES.map((role) => (
        <p key={role}>
          {role}
          <span className="block text-ink-2">Name, signature, day</span>
        </p>
      ))}
    </div>
  );
}
