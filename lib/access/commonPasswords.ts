import "server-only";
import { dictionary } from "@zxcvbn-ts/language-common";

/** The commonest passwords of published leaks, 49,233 in small letters, as the package keeps them. */
export const COMMON_PASSWORDS: ReadonlySet<string> = new Set(dictionary["passwords-common"]);
