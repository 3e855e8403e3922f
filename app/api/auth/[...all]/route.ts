import { toNextJsHandler } from "better-auth/next-js";
import { auth } from "@/lib/access/auth";

const handler = toNextJsHandler((request: Request) => auth().handler(request));

export const GET = handler.GET;
export const POST = handler.POST;
