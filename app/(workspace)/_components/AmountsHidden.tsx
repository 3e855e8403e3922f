import { Notice } from "@/app/_ui/Notice";

/** Says that a page leaves amounts out, so that nobody takes what is not shown for what is not known. */
export function AmountsHidden() {
  return (
    <Notice kind="info">
      Amounts of money are left out wherever your roles do not show them, and nothing stands in the order of
      them there. An administrator changes it under People.
    </Notice>
  );
}
