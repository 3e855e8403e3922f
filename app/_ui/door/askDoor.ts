/** What the sign-in answered: its content, or what the person reads instead. */
export type DoorAnswer<T> = { readonly value: T } | { readonly problem: string };

/**
 * Asks something of the sign-in, which keeps passwords and second factors.
 *
 * @param refused What a refusal of what was entered means here.
 */
export async function askDoor<T>(path: string, body: object, refused: string): Promise<DoorAnswer<T>> {
  const answer = await fetch(`/api/auth/${path}`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  }).catch(() => null);
  if (answer?.ok) return { value: (await answer.json()) as T };
  if (answer?.status === 429) return { problem: "Too many attempts. Wait a minute, then try again." };
  if (answer && answer.status < 500) return { problem: refused };
  return { problem: "Ebbline did not answer. Nothing was changed; try again." };
}
