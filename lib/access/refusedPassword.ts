import "server-only";
import { COMMON_PASSWORDS } from "@/lib/access/commonPasswords";
import { passwordProblem } from "@/lib/access/passwordRule";
import { database } from "@/lib/data/client";

/** Why somebody may not have this password here, for whoever chose it; null when they may. */
export async function refusedPassword(
  password: string,
  person: { readonly email: string; readonly name: string },
): Promise<string | null> {
  const sites = await database().site.findMany({ select: { code: true, name: true } });
  const places = sites.flatMap(({ code, name }) => [code, name]);
  return passwordProblem(password, { ...person, places }, COMMON_PASSWORDS);
}
