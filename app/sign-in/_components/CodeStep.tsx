"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/Button";
import { askDoor } from "@/app/_ui/door/askDoor";
import { DoorForm } from "@/app/_ui/door/DoorForm";

const WRONG = "The code is not right, or its half minute is over. Enter the one shown now.";
const WRONG_EMERGENCY = "This emergency code is not right, or it was used already.";

/** The second step of signing in: the code of the device, or an emergency code when the device is lost. */
export function CodeStep({ onDone }: { readonly onDone: () => void }) {
  const [isLost, setLost] = useState(false);
  const prove = async (entered: string) => {
    const code = entered.replaceAll(" ", "");
    const answer = isLost
      ? await askDoor("two-factor/verify-backup-code", { code }, WRONG_EMERGENCY)
      : await askDoor("two-factor/verify-totp", { code }, WRONG);
    if ("problem" in answer) return answer.problem;
    onDone();
    return null;
  };
  return (
    <div className="grid gap-4">
      <p>Your account asks for a second factor.</p>
      <DoorForm
        label={isLost ? "Emergency code" : "Code of six digits"}
        kind="code"
        button="Sign in"
        pendingText="Signing in…"
        run={prove}
      />
      <div>
        <Button kind="quiet" onClick={() => setLost(!isLost)}>
          {isLost ? "I have the device" : "I have lost the device"}
        </Button>
      </div>
    </div>
  );
}
