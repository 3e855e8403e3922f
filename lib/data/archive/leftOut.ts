import "server-only";

/** Tables with what people, calendars and other systems get in with; only a backup holds them. */
export const SECRETS: Readonly<Record<string, string>> = {
  Account: "passwords people sign in with, as hashes",
  CalendarFeed: "secret addresses of people's calendars, as hashes",
  AccessKey: "keys of other systems, as hashes",
  TwoFactor: "second factors of sign-in",
  Webhook: "addresses elsewhere that this installation tells of changes",
};

/** Columns that only a backup holds, as `Table.column`: without the secrets they would lock people out. */
export const SECRET_COLUMNS: readonly string[] = ["User.twoFactorEnabled"];

/** Tables that no copy holds. */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  _prisma_migrations: "says what the tables look like; the manifest names it",
  DataVersion: "counts on from the higher number",
  Evaluation: "is computed again",
  LineRow: "is computed again",
  PoolRow: "is computed again",
  PastEvaluation: "is computed again",
  PastLine: "is computed again",
  PastPool: "is computed again",
  ImportDifference: "is compared again",
  ImportPrepared: "is read again",
  NarrowChange: "spares computing again what is not copied",
  Session: "who is signed in now",
  Verification: "confirmations under way",
  RateLimit: "attempts of the last minutes",
  Invitation: "one-time links of this installation",
  AccountInvitation: "one-time links of this installation",
  KeptAnswer: "what other systems were answered lately",
  WebhookDelivery: "messages of this installation",
  WrongPassword: "attempts of the last minutes",
  WholeCopy: "copies of this installation",
};
