import { actorOfKey } from "@/lib/access/accessKey";
import { serve } from "@/lib/interface/serve";

export const dynamic = "force-dynamic";

interface InterfaceRoute {
  readonly params: Promise<{ readonly path: string[] }>;
}

/** Every operation of the interface; an access key is the permission. */
export async function GET(request: Request, { params }: InterfaceRoute): Promise<Response> {
  return serve(request, actorOfKey(request.headers.get("Authorization")), (await params).path);
}

export async function POST(request: Request, { params }: InterfaceRoute): Promise<Response> {
  return serve(request, actorOfKey(request.headers.get("Authorization")), (await params).path);
}

export async function PATCH(request: Request, { params }: InterfaceRoute): Promise<Response> {
  return serve(request, actorOfKey(request.headers.get("Authorization")), (await params).path);
}

export async function DELETE(request: Request, { params }: InterfaceRoute): Promise<Response> {
  return serve(request, actorOfKey(request.headers.get("Authorization")), (await params).path);
}
