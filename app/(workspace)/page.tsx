import { redirect } from "next/navigation";
import { signedInActor } from "@/lib/access/actor";
import { isOnlyReader, maySomewhere } from "@/lib/access/policy";

/** Who only reads and decides begins with what asks for a decision; who works on the records, with the lines. */
export default async function HomePage() {
  const { grants } = await signedInActor({ amounts: "hidden", to: "contractors" });
  if (!maySomewhere(grants, "read")) redirect("/projects");
  redirect(isOnlyReader(grants) ? "/home" : "/lines");
}
