import { demoAccounts } from "../../seed/accounts";
import { connect } from "./connect";
import { offerFirstAdmin } from "./firstAdmin";
import type { Settings } from "./settings";

/** How to sign in: a one-time link while there is nobody yet, else the demonstration's accounts. */
export async function firstAdminOrSignIns(url: string, { address, demo }: Settings): Promise<string[]> {
  const link = await offerFirstAdmin(url, address);
  if (link)
    return [
      "Nobody can sign in yet. Make the first administrator with this link, which works once:",
      `  ${link}`,
    ];
  return demo ? signIns(url) : [];
}

/** Only accounts that exist, since a database of one's own may hold other people. */
async function signIns(url: string): Promise<string[]> {
  const client = await connect(url);
  try {
    const emails = demoAccounts.map(({ email }) => email);
    const { rows } = await client.query<{ email: string }>(`SELECT email FROM "User" WHERE email = ANY($1)`, [
      emails,
    ]);
    const present = new Set(rows.map(({ email }) => email));
    const lines = demoAccounts
      .filter(({ email }) => present.has(email))
      .map(
        ({ email, password, role, sites }) =>
          `  ${email}  ${password}  (${role}, ${sites === "all" ? "all sites" : sites.join(", ")})`,
      );
    return lines.length === 0 ? [] : ["Demonstration accounts:", ...lines];
  } finally {
    await client.end();
  }
}
