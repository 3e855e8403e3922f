/** Told to the browser when somebody signs out: what pages kept on the device goes (W3C Clear Site Data). */
const CLEARED = '"storage"';

/**
 * What the sign-in's library answers, as it leaves: the token of a session stands in its cookie alone, which no script
 * reads, and signing out clears the device.
 */
export async function doorAnswer(address: string, answer: Response): Promise<Response> {
  const headers = new Headers(answer.headers);
  if (answer.ok && new URL(address).pathname.endsWith("/sign-out")) headers.set("Clear-Site-Data", CLEARED);
  const { status } = answer;
  if (!headers.get("content-type")?.includes("application/json"))
    return new Response(answer.body, { status, headers });
  headers.delete("content-length");
  return new Response(withoutTokens(await answer.text()), { status, headers });
}

function withoutTokens(text: string): string {
  if (text === "") return text;
  const told: unknown = JSON.parse(text, (name, value) => (name === "token" ? undefined : value));
  return JSON.stringify(told);
}
