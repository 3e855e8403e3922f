"use server";

import { action } from "@/lib/access/action";
import { inviteSomebody } from "@/lib/data/invitations";
import { changeProject, removeProject, setMilestone } from "@/lib/data/projectChange";
import { deliverMail } from "@/lib/jobs/deliverMail";
import { invitePerson } from "@/lib/schema/invitation";
import * as schema from "@/lib/schema/project";

export const setThisMilestone = action({
  needs: "project:write",
  input: schema.setMilestone,
  run: setMilestone,
});
export const changeThisProject = action({
  needs: "project:write",
  input: schema.changeProject,
  run: changeProject,
});
export const removeThisProject = action({
  needs: "project:write",
  input: schema.removeProject,
  run: removeProject,
});
export const inviteContractor = action({
  needs: "project:write",
  input: invitePerson,
  run: (actor, input) => inviteSomebody(actor, input, deliverMail),
});
