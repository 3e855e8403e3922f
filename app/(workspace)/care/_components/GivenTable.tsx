"use client";

import { Button } from "@/app/_ui/Button";
import { FormMessage } from "@/app/_ui/FormMessage";
import { RowTable } from "@/app/_ui/RowTable";
import { useDone } from "@/app/(workspace)/_components/useDone";
import { takeThisCareBack } from "@/app/(workspace)/care/actions";
import { plainNumber } from "@/lib/view/number";
import { careKinds, type GivenCare } from "@/lib/view/storageCare";
import { day } from "@/lib/view/time";

const HEADS = [
  "Day",
  "Bin",
  "Part",
  "Care",
  { text: "Pieces", end: true },
  { text: "Failed", end: true },
  "By",
  "What was seen",
  { text: "Take back", print: false },
] as const;

/** Care that was recorded, the latest first; taken back while the lot was not changed since. */
export function GivenTable({ given }: { readonly given: readonly GivenCare[] }) {
  const { done, tell } = useDone();
  if (given.length === 0) return <p>No care is recorded yet. Record it above, at the lot.</p>;
  const takeBack = async ({ id: careId, siteCode, bin }: GivenCare) => {
    const made = await takeThisCareBack({ careId });
    tell({ message: made.ok ? `Care of ${siteCode} ${bin} taken back.` : made.error.reason });
  };
  return (
    <>
      <FormMessage kind="done">{done?.message}</FormMessage>
      <RowTable caption="Care given" heads={HEADS}>
        {given.map((care) => (
          <tr key={care.id}>
            <th scope="row" className="whitespace-nowrap">
              {day(care.doneOn)}
            </th>
            <td>
              {care.siteCode} {care.bin}
            </td>
            <td>{care.part}</td>
            <td>{careKinds.find(({ value }) => value === care.kind)?.label}</td>
            <td data-align="end">{plainNumber(care.pieces)}</td>
            <td data-align="end">{plainNumber(care.failed)}</td>
            <td>{care.doneBy}</td>
            <td>{care.note}</td>
            <td className="no-print">
              {care.mayChange ? (
                <Button kind="quiet" onClick={() => takeBack(care)}>
                  Take {care.bin} back
                </Button>
              ) : null}
            </td>
          </tr>
        ))}
      </RowTable>
    </>
  );
}
