import type { Done } from "@/app/(workspace)/_components/useDone";
import { pinThisLine, placeThisWay } from "@/app/(workspace)/plans/[id]/actions";
import { shortWay } from "@/lib/view/boardWords";
import type { BoardLine, BoardSlot } from "@/lib/view/planBoard";

interface BoardEditTerms {
  readonly planId: string;
  readonly version: number;
  readonly tell: (done: Done) => void;
}

/** What can be done to a plan on its board. */
export interface BoardEdit {
  /** Puts a way into a place; null takes it out. */
  place(line: BoardLine, optionId: string, slot: Pick<BoardSlot, "id" | "name"> | null): Promise<boolean>;
  /** Decides a line in or out, or frees it; gives the reason of a refusal. */
  pin(line: BoardLine, pin: "in" | "out" | "none", reason: string): Promise<string | null>;
}

/** Changes of a plan as the person sees it; each can be taken back. */
export function boardEdit({ planId, version, tell }: BoardEditTerms): BoardEdit {
  const place: BoardEdit["place"] = async (line, option, slot) => {
    const { lineId, code, placed } = line;
    const answer = await placeThisWay({ planId, version, lineId, option, slot: slot?.id ?? null });
    if (!answer.ok) {
      tell({ message: answer.error.reason });
      return false;
    }
    const what = `${code}: ${shortWay(option)}`;
    tell({
      message: slot ? `${what} to ${slot.name}.` : `${what} taken out.`,
      undo: () => restore(answer.value, line, placed),
    });
    return true;
  };
  const pin: BoardEdit["pin"] = async (line, to, reason) => {
    const answer = await pinThisLine({ planId, version, lineId: line.lineId, pin: to, reason });
    if (!answer.ok) return answer.error.fields?.reason ?? answer.error.reason;
    const { pin: before, pinReason } = line;
    const said = to === "none" ? `${line.code} is free again.` : `${line.code} pinned ${to}.`;
    tell({
      message: said,
      undo: async () => {
        const back = await pinThisLine({
          ...{
            planId,
            version: answer.value.version,
            lineId: line.lineId,
            pin: before,
            reason: pinReason ?? "",
          },
        });
        return back.ok ? restore(back.value, line, line.placed) : back;
      },
    });
    return null;
  };
  return { place, pin };
}

/** Puts a line back to the ways that were placed before. */
async function restore(
  mark: { readonly planId: string; readonly version: number },
  line: BoardLine,
  placed: BoardLine["placed"],
) {
  let answer: Awaited<ReturnType<typeof placeThisWay>> = { ok: true, value: mark };
  const steps = [
    ...line.ways
      .filter(({ id }) => !placed.some(({ optionId }) => optionId === id))
      .map(({ id }) => ({ id, slot: null })),
    ...placed.map(({ optionId, slotId }) => ({ id: optionId, slot: slotId })),
  ];
  for (const { id, slot } of steps) {
    if (!answer.ok) return answer;
    answer = await placeThisWay({ ...answer.value, lineId: line.lineId, option: id, slot });
  }
  return answer;
}
