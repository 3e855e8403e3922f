import Link from "next/link";
import { memo } from "react";

/**
 * The framework's link, as a part of a package: what it is handed is shown as it is, so its texts are put into the
 * reader's words where it is used, and not where it is made.
 */
export const Anchor = memo(Link);
