import type { CardContact } from "@/lib/view/nightCard";

/** Functions to call, each a large target for the thumb. */
export function Contacts({ contacts }: { readonly contacts: readonly CardContact[] }) {
  if (contacts.length === 0) return <p>No number is recorded for this site. Follow the site's own list.</p>;
  return (
    <ul className="card-columns">
      {contacts.map(({ id, role, phone, hours, note }) => (
        <li key={id}>
          <a href={`tel:${phone.replace(/[^+\d]/g, "")}`} className="card-call">
            <span className="font-semibold">{role}</span> <span className="whitespace-nowrap">{phone}</span>
            <span className="block text-ink-2">
              {hours}
              {note === null ? "" : `; ${note}`}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
