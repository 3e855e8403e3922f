/** What keeps the installation from working that is no fault of who asks, and ends by itself or by making room. */
export type Trouble = "away" | "full";

/** SQLSTATE and names of the system for a disk, or a share of one, that is used up. */
const FULL = /^(53100|ENOSPC|EDQUOT)$/;
/**
 * SQLSTATE of class 08 and of a server that stops, starts or has no place left; what the client and the system call a
 * connection that cannot be had, breaks, or answers too late.
 */
const AWAY =
  /^(08...|57P0[1-3]|53300|P10(01|02|08|17)|P2024|P2028|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|DatabaseNotReachable|ConnectionClosed|SocketTimeout|TooManyConnections)$/;
const BROKEN_OFF =
  /^(Connection terminated|Client has encountered a connection error|timeout exceeded when trying)/;
const DEPTH = 6;

/** Words of all that an error says of its cause. */
function signsOf(error: unknown, depth = DEPTH): string[] {
  if (typeof error !== "object" || error === null || depth === 0) return [];
  const { code, originalCode, kind, message, cause, meta, driverAdapterError } = error as Record<
    string,
    unknown
  >;
  const own = [code, originalCode, kind, message].filter((sign) => typeof sign === "string");
  return [...own, ...[cause, meta, driverAdapterError].flatMap((inner) => signsOf(inner, depth - 1))];
}

/** Which trouble an error tells of; null is none of them. */
export function troubleOf(error: unknown): Trouble | null {
  const signs = signsOf(error);
  if (signs.some((sign) => FULL.test(sign))) return "full";
  return signs.some((sign) => AWAY.test(sign) || BROKEN_OFF.test(sign)) ? "away" : null;
}

/** What a person reads instead of what was asked for. */
export const TROUBLES: Readonly<Record<Trouble, string>> = {
  away: "The database did not answer in time, so it is not known whether this was done. Look in a moment whether it was, then try again.",
  full: "There is no room left on the server's disk, so nothing was changed. Tell who runs Ebbline; once there is room, try again.",
};
