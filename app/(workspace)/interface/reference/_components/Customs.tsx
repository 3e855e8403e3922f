/** What holds for every call. */
export function Customs() {
  return (
    <ul className="measure grid list-disc gap-2 pl-5">
      <li>
        Every call gives its key as <code>Authorization: Bearer ebb_…</code>. What the key or its person may
        not see answers as if it were not there.
      </li>
      <li>
        A key may make 300 calls at once and gets 10 back each second. Beyond that the answer is 429 with{" "}
        <code>Retry-After</code>.
      </li>
      <li>
        Lists come in pages in the order of ids: give <code>next</code> of a page as <code>after</code> of the
        next one.
      </li>
      <li>
        Give <code>ETag</code> of an answer back as <code>If-None-Match</code>: 304 says that nothing of it
        changed. <code>Ebbline-Data-Version</code> counts the changes of the records behind the figures.
      </li>
      <li>
        Each write has a name of its own in <code>Idempotency-Key</code>. Sent again with the same body, also
        at the same time, it has no second effect and gets the same answer, for 7 days; with another body it
        is refused. When the first is still being done the answer is 409: send it again in a while. A write
        that was refused left no trace, and its name may be used again.
      </li>
      <li>
        Exact amounts and lengths of time are text, such as <code>"410.50"</code>, with their currency;
        estimates are numbers. Days are <code>2026-11-30</code>, instants are UTC. What is not known is null,
        never 0.
      </li>
    </ul>
  );
}
