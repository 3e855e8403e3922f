import { RowTable } from "@/app/_ui/RowTable";
import { SUBJECT_KEYS, SUBJECTS } from "@/lib/schema/webhook";

const CHECK = `printf '%s' "$MESSAGE.$TIME.$BODY" | openssl dgst -sha256 -hmac "$SECRET"`;

/** What a system gets that is told of changes, and how it knows that it comes from here. */
export function Messages() {
  return (
    <>
      <ul className="measure mb-4 grid list-disc gap-2 pl-5">
        <li>
          A message is a POST with JSON: <code>id</code>, <code>subject</code>, <code>at</code>,{" "}
          <code>siteId</code>, the <code>things</code> that changed with kind, id and deed, <code>more</code>{" "}
          (how many it does not name) and where to <code>read</code> them.
        </li>
        <li>
          <code>Ebbline-Signature</code> holds <code>v1=</code> and the HMAC-SHA-256, hex, over{" "}
          <code>Ebbline-Message</code>, a full stop, <code>Ebbline-Time</code>, a full stop and the body as it
          came. While a former secret still signs, two stand there, parted by a comma: one must match. Compare
          in constant time, and refuse a time more than five minutes off.
        </li>
        <li>
          Answer with a status from 200 to 299 within 10 seconds. Anything else is tried again after 10 s, 30
          s, 2, 10 and 30 minutes, 1, 2, 4 and 8 hours; then the message is given up and the system taken out
          of use, with a note on its page.
        </li>
        <li>
          Messages come in order. One whose answer was lost comes again with the same <code>id</code>: take
          each id once.
        </li>
      </ul>
      <pre className="mb-4 whitespace-pre-wrap break-all border border-rule-2 p-3 text-sm">{CHECK}</pre>
      <RowTable caption="Kinds of change" heads={["Subject", "When", "Read at"]}>
        {SUBJECT_KEYS.map((key) => (
          <tr key={key}>
            <td>
              <code>{key}</code>
            </td>
            <td>{SUBJECTS[key].label}</td>
            <td>{SUBJECTS[key].read === null ? "Its page" : <code>{SUBJECTS[key].read}</code>}</td>
          </tr>
        ))}
      </RowTable>
    </>
  );
}
