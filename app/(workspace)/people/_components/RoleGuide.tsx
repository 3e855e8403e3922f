import { roles } from "@/lib/view/roles";

/** What each role may do, one line each. */
export function RoleGuide() {
  return (
    <dl className="grid gap-x-6 gap-y-2 sm:grid-cols-[10rem_minmax(0,1fr)]">
      {roles.map(({ role, name, sentence }) => (
        <div key={role} className="contents">
          <dt className="font-semibold">{name}</dt>
          <dd className="measure max-sm:mb-2">{sentence}</dd>
        </div>
      ))}
    </dl>
  );
}
