import { once } from "node:events";
import { type AddressInfo, connect, createServer, type Socket } from "node:net";

/** A way to a database that can be cut and made slow. */
export interface TcpProxy {
  /** The same address by way of the proxy. */
  readonly url: (database: string) => string;
  /** Ends what is open and lets nothing through until it is mended. */
  cut(): void;
  mend(): void;
  /** Keeps each piece of what goes through for so long; milliseconds. */
  delay(ms: number): void;
  stop(): Promise<void>;
}

export async function startTcpProxy(to: { host: string; port: number }): Promise<TcpProxy> {
  const open = new Set<Socket>();
  let [isCut, delay] = [false, 0];
  const pass = (from: Socket, into: Socket) => {
    open.add(from);
    from.on("data", (piece) => setTimeout(() => into.writable && into.write(piece), delay));
    from.on("error", () => undefined);
    from.on("close", () => {
      open.delete(from);
      setTimeout(() => into.destroy(), delay);
    });
  };
  const server = createServer((near) => {
    if (isCut) return near.destroy();
    const far = connect(to);
    pass(near, far);
    pass(far, near);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  const cut = () => {
    isCut = true;
    for (const socket of open) socket.destroy();
  };
  return {
    url: (database) => Object.assign(new URL(database), { host: `127.0.0.1:${port}` }).href,
    cut,
    mend: () => {
      isCut = false;
    },
    delay: (ms) => {
      delay = ms;
    },
    stop: async () => {
      cut();
      server.close();
      await once(server, "close");
    },
  };
}
