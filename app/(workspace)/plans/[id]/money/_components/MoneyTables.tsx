import { RowTable } from "@/app/_ui/RowTable";
import { Section } from "@/app/_ui/Section";
import { money, thousands } from "@/lib/view/format";
import { quarterWords } from "@/lib/view/limitWords";
import { plainNumber } from "@/lib/view/number";
import type { BoardView, YearMoney } from "@/lib/view/planBoard";

/** Money of the plan by year, by site, and by quarter and currency. */
export function MoneyTables({ view }: { readonly view: BoardView }) {
  const { years, reserveShare } = view;
  return (
    <>
      <Section
        title="By year"
        lead={`What is planned against what there is less ${plainNumber(reserveShare * 100)} % kept back for emergencies. Typical cost, paid as the work is prepared and done.`}
      >
        <RowTable
          caption="Money by year"
          heads={[
            "Year",
            { text: "Budget", end: true },
            { text: "Less reserve", end: true },
            { text: "Planned", end: true },
            { text: "Left", end: true },
            "Share used",
          ]}
        >
          {years.map((year) => (
            <tr key={year.year}>
              <th scope="row">{year.year}</th>
              <td data-align="end">{year.budget === null ? "not stated" : money(year.budget)}</td>
              <td data-align="end">{year.most === null ? "not stated" : money(year.most)}</td>
              <td data-align="end">{money(year.spent)}</td>
              <LeftCell {...year} />
              <td className="min-w-40">
                <UseBar used={year.spent} most={year.most} />
              </td>
            </tr>
          ))}
        </RowTable>
      </Section>
      <SiteTable view={view} />
      <CashTable view={view} />
    </>
  );
}

function LeftCell({ most, spent }: Pick<YearMoney, "most" | "spent">) {
  if (most === null) return <td data-align="end">not known</td>;
  const over = spent > most;
  return (
    <td data-align="end" className={over ? "font-semibold text-worse" : ""}>
      {over ? `▲ ${money(spent - most)} too much` : money(most - spent)}
    </td>
  );
}

/** How much of a thing is used, as a bar on the whole there is; more than there is runs out in orange. */
export function UseBar({ used, most }: { readonly used: number; readonly most: number | null }) {
  if (most === null) return <span className="text-ink-2 text-sm">not limited</span>;
  const share = most > 0 ? used / most : used > 0 ? 2 : 0;
  const text = `${plainNumber(share * 100)} % used`;
  return (
    <span className="flex items-center gap-2">
      <svg
        role="img"
        aria-label={text}
        viewBox="0 0 100 10"
        preserveAspectRatio="none"
        className="h-2.5 w-28"
      >
        <title>{text}</title>
        <rect
          x="0"
          y="1"
          width="100"
          height="8"
          fill="var(--sheet)"
          stroke="var(--rule-2)"
          vectorEffect="non-scaling-stroke"
        />
        <rect
          x="0"
          y="1"
          width={Math.min(100, share * 100)}
          height="8"
          fill={share > 1 ? "var(--worse)" : "var(--money-4)"}
        />
      </svg>
      <span className="text-sm">{plainNumber(share * 100)} %</span>
    </span>
  );
}

function SiteTable({ view: { sites, years, inputs } }: { readonly view: BoardView }) {
  const shown = inputs.sites.filter(({ id }) =>
    sites.some((one) => one.siteId === id && (one.spent > 0 || one.most !== null)),
  );
  return (
    <Section
      title="By site"
      lead="Planned of what the site may take, in thousands of EUR; its own budget or its share of the group's, whichever is less."
    >
      <RowTable
        caption="Money by site and year"
        heads={["Site", ...years.map(({ year }) => ({ text: `${year} k€`, end: true }))]}
      >
        {shown.map(({ id, code, name }) => (
          <tr key={id}>
            <th scope="row">
              {code} {name}
            </th>
            {years.map(({ year }) => {
              const cell = sites.find((one) => one.siteId === id && one.year === year);
              const over = cell?.most != null && cell.spent > cell.most;
              return (
                <td key={year} data-align="end" className={over ? "font-semibold text-worse" : ""}>
                  {over ? "▲ " : ""}
                  {thousands(cell?.spent ?? 0)}
                  <span className="font-normal text-ink-2">
                    {" "}
                    of {cell?.most == null ? "no limit" : thousands(cell.most)}
                  </span>
                </td>
              );
            })}
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}

function CashTable({ view: { cash, inputs } }: { readonly view: BoardView }) {
  const currencies = [...new Set(cash.flatMap(({ local }) => Object.keys(local)))].sort();
  const rates = inputs.rates.filter(({ currency }) => currency !== "EUR" && currencies.includes(currency));
  return (
    <Section
      title="Cash by quarter"
      lead={`Typical cost by quarter and currency, in thousands${rates.length > 0 ? `; at budget rates of ${rates.map(({ currency, perEuro }) => `${perEuro} ${currency}`).join(", ")} for one EUR` : ""}. Three tenths fall two quarters before the work, three tenths in the quarter before, the rest with it: common practice, no source.`}
    >
      <RowTable
        caption="Cash by quarter and currency"
        heads={[
          "Quarter",
          { text: "All, k€", end: true },
          ...currencies.map((text) => ({ text: `k ${text}`, end: true })),
        ]}
      >
        {cash.map(({ quarterId, euros, local }) => (
          <tr key={quarterId}>
            <th scope="row">{quarterWords(quarterId)}</th>
            <td data-align="end">{thousands(euros)}</td>
            {currencies.map((currency) => (
              <td key={currency} data-align="end">
                {local[currency] === undefined ? "–" : thousands(local[currency])}
              </td>
            ))}
          </tr>
        ))}
      </RowTable>
    </Section>
  );
}
