/** What can hurt or ruin, in the product's own words; local law and the site's rules come first. */
const CAUTIONS = [
  {
    title: "Electrical work",
    text: "Qualified persons only. Switch off, lock out, prove that there is no voltage, then begin.",
  },
  {
    title: "Stored energy",
    text: "Links between drives stay charged for minutes and feed each other: read the label, wait, measure. Vertical axes drop; turning motors make voltage; resistors burn.",
  },
  {
    title: "A spare that lay for years",
    text: "Not onto full voltage at once. Ask a competent person how it is brought up.",
  },
  {
    title: "Motion network",
    text: "No scan on a running network. Change firmware only with a copy in hand and the line stopped.",
  },
  {
    title: "Copies and parameters",
    text: "Never carry gains and limits over between unlike drives. First motion slow, torque low, nobody in reach.",
  },
  {
    title: "Safety functions",
    text: "A changed part, stop or speed needs a named person to assess and prove it before production.",
  },
] as const;

/** Before anybody touches the machine. */
export function Cautions() {
  return (
    <section aria-labelledby="cautions" className="card-section border-2 border-ink">
      <div className="work-stripe" aria-hidden="true" />
      <div className="px-3 py-2">
        <h2 id="cautions">Before you touch it</h2>
        <p>National law, local codes and the rules of the site come before this card.</p>
        <ul className="card-columns">
          {CAUTIONS.map(({ title, text }) => (
            <li key={title}>
              <strong>{title}.</strong> {text}
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}
