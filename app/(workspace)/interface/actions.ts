"use server";

import { action } from "@/lib/access/action";
import { makeKey, revokeKey } from "@/lib/data/accessKeys";
import { dropHook, makeHook, renewSecret, resend, switchHook, tryHook } from "@/lib/data/webhookChange";
import * as keys from "@/lib/schema/accessKey";
import * as hooks from "@/lib/schema/webhook";

export const makeAccessKey = action({ needs: "read", input: keys.makeAccessKey, run: makeKey });
export const revokeAccessKey = action({ needs: "read", input: keys.revokeAccessKey, run: revokeKey });

export const makeWebhook = action({ needs: "people:write", input: hooks.makeWebhook, run: makeHook });
export const switchWebhook = action({ needs: "people:write", input: hooks.switchWebhook, run: switchHook });
export const renewWebhookSecret = action({ needs: "people:write", input: hooks.ofWebhook, run: renewSecret });
export const tryWebhook = action({ needs: "people:write", input: hooks.ofWebhook, run: tryHook });
export const dropWebhook = action({ needs: "people:write", input: hooks.ofWebhook, run: dropHook });
export const resendDelivery = action({ needs: "people:write", input: hooks.resendDelivery, run: resend });
