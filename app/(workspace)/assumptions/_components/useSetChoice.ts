import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { chooseSet } from "@/app/(workspace)/assumptions/actions";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import { assumptionKindName } from "@/lib/view/assumptionSet";

const wordsOf = ({ kind, version }: AssumptionChoice) => `${assumptionKindName(kind)}, version ${version}`;

/** Takes a set into use, says so, and takes the former one back when asked. */
export function useSetChoice() {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const [former, setFormer] = useState<AssumptionChoice | null>(null);
  const refused = useRef(false);
  const choose = async (choice: AssumptionChoice) => {
    const answer = await chooseSet(choice);
    setMessage(answer.ok ? `${wordsOf(choice)}, is in use now.` : answer.error.reason);
    setFormer(answer.ok ? answer.value.former : null);
    router.refresh();
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
