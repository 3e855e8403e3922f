import { Notice } from "@/app/_ui/Notice";

/** Who decides on a safety or legal date: not the product. */
export function BindingCaution() {
  return (
    <Notice kind="caution" title="A named competent person decides">
      Ebbline records these dates and their sources. It does not judge whether a machine is safe or a duty is
      met, and calculates no performance level. National law, local codes and the site's own rules hold; what
      is not listed here may bind all the same.
    </Notice>
  );
}
