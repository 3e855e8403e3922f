import type { Refusal } from "@/lib/access/action";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type FileLimits, registerFile } from "@/lib/schema/registerFile";

interface HandedIn {
  readonly register: string;
  readonly file: File;
}

/** A file on its way. */
export interface Sending {
  readonly answer: Promise<Result<{ readonly batchId: string }, Refusal>>;
  /** Breaks it off; nothing is kept. */
  readonly stop: () => void;
}

/** The file and register of the form, or what is wrong with them; the server asks again. */
export function handedIn(form: FormData, limits: FileLimits): Result<HandedIn, Refusal> {
  const [register, file] = [form.get("register"), form.get("file")];
  const given = file instanceof File ? file : new File([], "");
  const name = typeof register === "string" ? register : "";
  const read = registerFile(limits).safeParse({ register: name, name: given.name, size: given.size });
  if (read.success) return ok({ register: name, file: given });
  const fields = Object.fromEntries(read.error.issues.map(({ path, message }) => [path.join("."), message]));
  return err({ code: "invalid", reason: "Some entries cannot be used. Nothing was changed.", fields });
}

const broken: Refusal = {
  code: "impossible",
  reason: "The connection broke while the file was sent. Nothing was kept; hand it in again.",
};
const stopped: Refusal = { code: "impossible", reason: "Sending was stopped. Nothing was kept." };

/** Sends a file straight from the disk, telling the share that has gone; only this kind of request tells it. */
export function sendFile({ register, file }: HandedIn, hear: (share: number) => void): Sending {
  const request = new XMLHttpRequest();
  const answer = new Promise<Result<{ readonly batchId: string }, Refusal>>((resolve) => {
    request.upload.onprogress = ({ loaded, total }) => hear(total > 0 ? loaded / total : 0);
    request.onload = () => resolve(request.response ?? err(broken));
    request.onerror = () => resolve(err(broken));
    request.onabort = () => resolve(err(stopped));
  });
  request.open("POST", `/api/import/file?${new URLSearchParams({ register, name: file.name })}`);
  request.responseType = "json";
  request.setRequestHeader("Content-Type", "application/octet-stream");
  request.send(file);
  return { answer, stop: () => request.abort() };
}
