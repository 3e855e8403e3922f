"use server";

import { action } from "@/lib/access/action";
import { addNewPerson, closePersonAccount, setPersonGrants } from "@/lib/data/people";
import { addPerson, closeAccount, setGrants } from "@/lib/schema/people";

export const makeAccount = action({ needs: "people:write", input: addPerson, run: addNewPerson });

export const saveRoles = action({ needs: "people:write", input: setGrants, run: setPersonGrants });

export const switchAccount = action({ needs: "people:write", input: closeAccount, run: closePersonAccount });
