const ROLES = ["Prepared by", "Plant manager", "Finance controller", "Group engineering manager"];

/** Lines to sign on; functions, not names. */
export function Signatures() {
  return (
    <div className="signature-lines keep-together text-sm">
      {ROLES.map((role) => (
        <p key={role}>
          {role}
          <span className="block text-ink-2">Name, signature, day</span>
        </p>
      ))}
    </div>
  );
}
