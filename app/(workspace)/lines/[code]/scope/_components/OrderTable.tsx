import { AsOfLink } from "@/app/_ui/AsOfLink";
import { Derivation } from "@/app/_ui/Derivation";
import { RowTable } from "@/app/_ui/RowTable";
import type { Scope } from "@/lib/retrofit/scope/buildScope";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { money } from "@/lib/view/format";
import {
  type DatedOrder,
  type FittedWindow,
  normWords,
  orderByWords,
  windowDays,
} from "@/lib/view/lineScope";
import { NOT_KNOWN, plainNumber } from "@/lib/view/number";
import { day } from "@/lib/view/time";

interface OrderTableProps {
  readonly orders: readonly DatedOrder[];
  readonly asOf: string;
  readonly scope: Scope;
  readonly norms: ScopeNorms;
  readonly window: FittedWindow | null;
  readonly showsAmounts: boolean;
}

const headsOf = (showsAmounts: boolean) => [
  ...["What", "Part", { text: "Pieces", end: true }],
  ...(showsAmounts ? [{ text: "List price", end: true }] : []),
  ...[{ text: "Lead, weeks", end: true }, "Order by"],
];

/** What to order, how long it takes and the last day to begin buying it. */
export function OrderTable(props: OrderTableProps) {
  const { orders, asOf, showsAmounts } = props;
  return (
    <>
      <RowTable caption="Parts to order" heads={headsOf(showsAmounts)}>
        {orders.map((order) => (
          <OrderLine key={`${order.label} ${order.part?.id}`} {...{ order, asOf, showsAmounts }} />
        ))}
      </RowTable>
      <OrderSteps {...props} />
    </>
  );
}

interface OrderLineProps extends Pick<OrderTableProps, "asOf" | "showsAmounts"> {
  readonly order: DatedOrder;
}

function OrderLine({ order, asOf, showsAmounts }: OrderLineProps) {
  const { label, part, quantity, leadWeeks } = order;
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{part === null ? "not chosen" : <AsOfLink href={`/parts/${part.id}`}>{part.number}</AsOfLink>}</td>
      <td data-align="end">{normWords(quantity)}</td>
      {showsAmounts ? (
        <td data-align="end">
          {money(part?.price ?? null)}
          {part?.pricedOn ? <span className="block text-ink-2 text-sm">{day(part.pricedOn)}</span> : null}
        </td>
      ) : null}
      <td data-align="end">{leadWeeks === null ? NOT_KNOWN : plainNumber(leadWeeks)}</td>
      <td>{orderByWords(order.orderBy, asOf)}</td>
    </tr>
  );
}

function OrderSteps({ orders, scope, norms, window }: Omit<OrderTableProps, "showsAmounts">) {
  const slowest = [...orders]
    .filter(({ leadWeeks }) => leadWeeks !== null)
    .sort((a, b) => (b.leadWeeks ?? 0) - (a.leadWeeks ?? 0))[0];
  if (window === null || slowest?.leadWeeks === undefined || slowest.leadWeeks === null) return null;
  const { plain } = norms;
  const { neededOn } = windowDays(scope, window);
  return (
    <Derivation
      title="How the last day to order is worked out"
      steps={[
        { label: "Window begins", value: day(window.window.startsOn), source: window.window.name },
        {
          label: "Needed on site",
          formula: `${plainNumber(scope.partsAhead, 1)} working days earlier × 7 ÷ 5, for panel building, bench and cutover plan`,
          value: day(neededOn),
        },
        {
          label: "Lead time of the slowest part",
          value: plainNumber(slowest.leadWeeks),
          unit: "weeks",
          source: slowest.part?.number,
        },
        {
          label: "Transport, buying, receiving",
          formula: `${plain.transportWeeks} + ${plain.purchaseWeeks} + ${plain.incomingWeeks}`,
          value: plainNumber(plain.transportWeeks + plain.purchaseWeeks + plain.incomingWeeks, 1),
          unit: "weeks",
          source: "norm",
        },
        { label: "Order by", value: day(slowest.orderBy) },
      ]}
    >
      The lead time is the one that holds four times in five where it is on record, else the usual one.
      Confirm both with the supplier before anything is promised.
    </Derivation>
  );
}
