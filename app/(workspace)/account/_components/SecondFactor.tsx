"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { askDoor } from "@/app/_ui/door/askDoor";
import { DoorForm } from "@/app/_ui/door/DoorForm";
import { FormMessage } from "@/app/_ui/FormMessage";
import { CodeImage } from "@/app/(workspace)/account/_components/CodeImage";

interface Begun {
  readonly totpURI: string;
  readonly backupCodes: readonly string[];
}

const WRONG_PASSWORD = "The password is not right. Nothing was changed.";
const WRONG_CODE = "The code is not right, or its half minute is over. Enter the one shown now.";

/** A code asked for after the password: switched on, its emergency codes shown once, switched off. */
export function SecondFactor({ isOn }: { readonly isOn: boolean }) {
  const router = useRouter();
  const [begun, setBegun] = useState<Begun | null>(null);
  const [codes, setCodes] = useState<readonly string[] | null>(null);

  const begin = async (password: string) => {
    const answer = await askDoor<Begun>("two-factor/enable", { password }, WRONG_PASSWORD);
    if ("problem" in answer) return answer.problem;
    setBegun(answer.value);
    return null;
  };
  const confirm = async (code: string) => {
    const answer = await askDoor("two-factor/verify-totp", { code: code.replaceAll(" ", "") }, WRONG_CODE);
    if ("problem" in answer) return answer.problem;
    setCodes(begun?.backupCodes ?? null);
    setBegun(null);
    router.refresh();
    return null;
  };
  const renew = async (password: string) => {
    const answer = await askDoor<Begun>("two-factor/generate-backup-codes", { password }, WRONG_PASSWORD);
    if ("problem" in answer) return answer.problem;
    setCodes(answer.value.backupCodes);
    return null;
  };
  const drop = async (password: string) => {
    const answer = await askDoor("two-factor/disable", { password }, WRONG_PASSWORD);
    if ("problem" in answer) return answer.problem;
    setCodes(null);
    router.refresh();
    return null;
  };

  if (begun !== null)
    return (
      <>
        <p className="measure">
          Scan the picture with a program that makes codes, or type its key, then enter the code it shows.
        </p>
        <CodeImage address={begun.totpURI} />
        <DoorForm label="Code of six digits" kind="code" button="Switch it on" run={confirm} />
      </>
    );
  return (
    <>
      <p className="measure">
        {isOn
          ? "A code is asked for after your password."
          : "Your password alone opens your account. With a second factor whoever learns it still needs your device."}
      </p>
      <FormMessage kind="done">
        {codes === null ? null : (
          <>
            It is on. These codes, shown this once, open your account once each should the device be lost;
            those shown before no longer do: <code>{codes.join(" · ")}</code>
          </>
        )}
      </FormMessage>
      {isOn ? (
        <div className="grid gap-x-8 md:grid-cols-2">
          <DoorForm
            label="Password, for new emergency codes"
            kind="password"
            button="Make new codes"
            run={renew}
          />
          <DoorForm
            label="Password, to switch it off"
            kind="password"
            button="Switch it off"
            danger
            run={drop}
          />
        </div>
      ) : (
        <DoorForm label="Password" kind="password" button="Begin" run={begin} />
      )}
    </>
  );
}
