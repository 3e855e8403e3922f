import { expect, test } from "vitest";
import { isOpenDoor } from "@/lib/access/openDoors";

const at = (path: string) => isOpenDoor(`https://ebbline.halvenor.example/api/auth/${path}`);

test("of the sign-in's library only what the product uses answers", () => {
  for (const path of [
    "sign-in/email",
    "callback/company?code=1&state=2",
    "two-factor/verify-totp",
    "sign-out",
  ])
    expect(at(path), path).toBe(true);
  for (const path of [
    "sign-up/email",
    "admin/list-users",
    "update-user",
    "delete-user",
    "../v1/parts",
    "",
    "ok",
  ])
    expect(at(path), path).toBe(false);
});
