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
  // What was entered is understood and says itself why it will not do, such as a password that is soon guessed.
  if (answer?.status === 422) return { problem: ((await answer.json()) as { message: string }).message };
  if (answer && answer.status < 500) return { problem: refused };
  return { problem: "Ebbline did not answer. Nothing was changed; try again." };
}
