import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { signedInActor } from "@/lib/access/actor";
import { isOnlyReader, maySomewhere } from "@/lib/access/policy";
import { isStillEmpty } from "@/lib/data/firstSteps";
import { PUT_AWAY } from "@/lib/view/firstSteps";

/** Who can fill an empty installation begins with how; who only reads and decides begins with what asks for a decision; who works on the records, with the lines. */
export default async function HomePage() {
  const actor = await signedInActor({ amounts: "hidden", to: "contractors" });
  const { grants } = actor;
  if (!maySomewhere(grants, "read")) redirect("/projects");
  const putAway = (await cookies()).has(PUT_AWAY);
  if (!putAway && maySomewhere(grants, "register:import") && (await isStillEmpty(actor))) redirect("/start");
  redirect(isOnlyReader(grants) ? "/home" : "/lines");
}
