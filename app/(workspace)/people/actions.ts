"use server";

import { action } from "@/lib/access/action";
import { inviteSomebody, withdrawOne } from "@/lib/data/invitations";
import { addNewPerson, closePersonAccount, setPersonGrants } from "@/lib/data/people";
import { deliverMail } from "@/lib/jobs/deliverMail";
import * as invitation from "@/lib/schema/invitation";
import { addPerson, closeAccount, setGrants } from "@/lib/schema/people";

export const makeAccount = action({ needs: "people:write", input: addPerson, run: addNewPerson });

export const saveRoles = action({ needs: "people:write", input: setGrants, run: setPersonGrants });

export const invite = action({
  needs: "project:write",
  input: invitation.invitePerson,
  run: (actor, input) => inviteSomebody(actor, input, deliverMail),
});

export const withdrawInvitation = action({
  needs: "people:write",
  input: invitation.withdrawInvitation,
  run: withdrawOne,
});

export const switchAccount = action({ needs: "people:write", input: closeAccount, run: closePersonAccount });
