/** Address of the installation a test signs in to. */
export const HOME = "http://127.0.0.1:3999";

/** Whatever answers the requests of the sign-in. */
interface Door {
  readonly handler: (request: Request) => Promise<Response>;
}

/** A browser's cookies, as far as the sign-in sets them. */
export class Visitor {
  readonly #cookies = new Map<string, string>();
  readonly #door: Door;

  constructor(door: Door) {
    this.#door = door;
  }

  async ask(path: string, body?: object): Promise<Response> {
    const answer = await this.#door.handler(
      new Request(`${HOME}/api/auth/${path}`, {
        method: body ? "POST" : "GET",
        headers: {
          origin: HOME,
          cookie: [...this.#cookies].map(([name, value]) => `${name}=${value}`).join("; "),
          ...(body ? { "content-type": "application/json" } : {}),
        },
        ...(body ? { body: JSON.stringify(body) } : {}),
      }),
    );
    for (const cookie of answer.headers.getSetCookie()) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
      if (name !== undefined) this.#cookies.set(name, value ?? "");
    }
    return answer;
  }

  async isSignedIn(): Promise<boolean> {
    return (await (await this.ask("get-session")).json()) !== null;
  }
}
