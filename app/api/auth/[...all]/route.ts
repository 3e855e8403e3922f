import { toNextJsHandler } from "better-auth/next-js";
import { auth } from "@/lib/access/auth";
import { doorAnswer } from "@/lib/access/doorAnswer";
import { isOpenDoor } from "@/lib/access/openDoors";

const handler = toNextJsHandler(async (request: Request) =>
  isOpenDoor(request.url)
    ? doorAnswer(request.url, await auth().handler(request))
    : new Response(null, { status: 404 }),
);

export const GET = handler.GET;
export const POST = handler.POST;
