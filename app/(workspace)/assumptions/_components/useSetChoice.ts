import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { chooseSet } from "@/app/(workspace)/assumptions/actions";
import type { AssumptionChoice, ChosenAssumptions } from "@/lib/schema/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";

/** Takes a version into use; what refuses it is told to who asked. */
export type Choose = ReturnType<typeof useSetChoice>["choose"];

const wordsOf = ({ kind, version }: AssumptionChoice) => `${assumptionKindName(kind)}, version ${version}`;

/** Takes a set into use, says so, and takes the former one back when asked. */
export function useSetChoice() {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const [former, setFormer] = useState<AssumptionChoice | null>(null);
  const refused = useRef(false);
  const choose = async (choice: ChosenAssumptions) => {
    const answer = await chooseSet(choice);
    if (!answer.ok) return answer;
    setMessage(`${wordsOf(choice)}, is in use now.`);
    setFormer(answer.value.former);
    router.refresh();
    return answer;
  };
  const undo = async () => {
    if (former === null) return;
    const answer = await chooseSet(former);
    refused.current = !answer.ok;
    if (!answer.ok) setMessage(answer.error.reason);
    setFormer(null);
    router.refresh();
  };
  // The bar closes itself after an undo; a refusal has to stay to be read.
  const close = () => {
    if (!refused.current) setMessage(null);
    refused.current = false;
  };
  return { message, choose, close, undo: former === null ? null : undo };
}
