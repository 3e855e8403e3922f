import { type AddressInfo, createServer } from "node:net";
import { Refusal } from "./refusal";

/** @throws {Refusal} when the web server could not listen there. */
export async function refuseBusyPort(host: string, port: number): Promise<void> {
  try {
    await listenOnce(host, port);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EADDRINUSE")
      throw new Refusal(
        `Port ${port} is in use by another program: choose a free one, for example PORT=${port + 1} npm start.`,
      );
    if (code === "EACCES")
      throw new Refusal(`This account may not open port ${port}: choose one above 1023 with PORT=…`);
    throw new Refusal(`Nothing can be served at ${host}, port ${port} (${code}): check HOST and PORT.`);
  }
}

/** The preferred port of the loopback interface when it is free, else any free one. */
export async function freePort(preferred: number): Promise<number> {
  return listenOnce("127.0.0.1", preferred).catch(() => listenOnce("127.0.0.1", 0));
}

function listenOnce(host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen({ host, port, exclusive: true }, () => {
      const opened = (server.address() as AddressInfo).port;
      server.close(() => resolve(opened));
    });
  });
}
