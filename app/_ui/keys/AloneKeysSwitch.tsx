"use client";

import { useState } from "react";
import { CheckboxField } from "@/app/_ui/field/CheckboxField";
import { aloneKeysWork, setAloneKeys } from "@/app/_ui/keys/aloneKeys";

/** Switches keys pressed alone off and on, on this device. Drawn only where the browser is, since it asks there. */
export function AloneKeysSwitch() {
  const [work, setWork] = useState(aloneKeysWork);
  return (
    <CheckboxField
      name="alone-keys"
      label="Keys pressed alone act"
      hint="Filter or search with /, help with ?, walk rows with j and k. Ctrl K always searches."
      checked={work}
      onChange={({ target }) => {
        setWork(target.checked);
        setAloneKeys(target.checked);
      }}
    />
  );
}
