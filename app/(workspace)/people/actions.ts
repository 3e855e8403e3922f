"use server";

import { action } from "@/lib/access/action";
import { setRequiredFactor } from "@/lib/data/factorRule";
import { inviteSomebody, linkNewPassword, withdrawOne } from "@/lib/data/invitations";
import { addNewPerson, closePersonAccount, setPersonGrants } from "@/lib/data/people";
import { deliverMail } from "@/lib/jobs/deliverMail";
import * as invitation from "@/lib/schema/invitation";
import { addPerson, closeAccount, setFactorRule, setGrants } from "@/lib/schema/people";

export const makeAccount = action({ needs: "people:write", input: addPerson, run: addNewPerson });

export const saveRoles = action({ needs: "people:write", input: setGrants, run: setPersonGrants });

export const invite = action({
  needs: "project:write",
  input: invitation.invitePerson,
  run: (actor, input) => inviteSomebody(actor, input, deliverMail),
});

export const linkThisPassword = action({
  needs: "people:write",
  input: invitation.linkPassword,
  run: (actor, input) => linkNewPassword(actor, input, deliverMail),
});

export const withdrawInvitation = action({
  needs: "people:write",
  input: invitation.withdrawInvitation,
  run: withdrawOne,
});

export const setThisFactorRule = action({
  needs: "people:write",
  input: setFactorRule,
  run: setRequiredFactor,
});

export const switchAccount = action({ needs: "people:write", input: closeAccount, run: closePersonAccount });
