import { Caution } from "@/app/_ui/Caution";

/** What this page may not be taken for. */
export function ScopeCautions() {
  return (
    <Caution title="A scope is not a design: named competent persons decide">
      <ul className="list-disc pl-5">
        <li>
          Sizing a motor, building a panel, short-circuit rating: in many places only a licensed engineer or
          electrician may do it. Parts named here are candidates, not a sizing.
        </li>
        <li>
          A conversion can be a substantial modification that makes whoever does it the maker of that part of
          the machine (in the EU by Regulation 2023/1230 from 20 January 2027, from memory). A named competent
          person decides it and writes down why; this page only asks.
        </li>
        <li>
          Stopping, speed limits and safety functions are assessed and validated anew. Safety and legal dates
          are never weighed against money.
        </li>
        <li>
          Limits and gains of an unlike drive are never copied; first motion is slow, at low torque, with
          nobody in reach. De-energise, lock out and prove it before any hand goes in.
        </li>
        <li>
          Hours and prices are practice values, no quotes. Ends of a span are what is usual, not limits.
        </li>
      </ul>
    </Caution>
  );
}
