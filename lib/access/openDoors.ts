/** What of the sign-in's library is used; it answers to many more addresses, which nobody here needs. */
const OPEN = new Set([
  ...["sign-in/email", "sign-in/social", "callback/company", "error"],
  ...["get-session", "sign-out", "change-password"],
  ...["enable", "disable", "verify-totp", "verify-backup-code", "generate-backup-codes"].map(
    (step) => `two-factor/${step}`,
  ),
]);

/** Whether an address under /api/auth is one of the product's. */
export function isOpenDoor(address: string): boolean {
  return OPEN.has(new URL(address).pathname.replace(/^\/api\/auth\//, ""));
}
