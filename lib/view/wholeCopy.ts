/** A copy of the whole installation that was taken out, or taken in. */
export interface CopyNote {
  readonly id: string;
  readonly direction: "out" | "in";
  /** RFC 3339 instant in UTC. */
  readonly at: string;
  /** Null is the command line. */
  readonly by: string | null;
  /** SHA-256 of what it holds, hex. */
  readonly hash: string;
  readonly withSecrets: boolean;
  readonly rows: number;
}
