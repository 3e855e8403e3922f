/** Lines for names, signatures and days, to be written by hand. */
export function SignLines({ roles }: { readonly roles: readonly string[] }) {
  return (
    <dl className="keep-together mt-4 grid gap-y-1 text-sm">
      {roles.map((role) => (
        <div key={role} className="grid grid-cols-[11rem_1fr_1fr_7rem] items-end gap-x-4">
          <dt className="font-semibold">{role}</dt>
          <Blank text="name" />
          <Blank text="signature" />
          <Blank text="day" />
        </div>
      ))}
    </dl>
  );
}

function Blank({ text }: { readonly text: string }) {
  return <dd className="mt-5 border-ink border-t text-ink-2 text-xs">{text}</dd>;
}
