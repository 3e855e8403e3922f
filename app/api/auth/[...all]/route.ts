import { toNextJsHandler } from "better-auth/next-js";
import { auth } from "@/lib/access/auth";
import { isOpenDoor } from "@/lib/access/openDoors";

const handler = toNextJsHandler(async (request: Request) =>
  isOpenDoor(request.url) ? auth().handler(request) : new Response(null, { status: 404 }),
);

export const GET = handler.GET;
export const POST = handler.POST;
