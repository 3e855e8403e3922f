import { readDraft } from "@/app/_ui/draft/keptDraft";
import { REVIEW_TOPICS, type ReviewTopic } from "@/lib/view/reviewRecord";

const LOOKS = 20;
const BETWEEN_MS = 250;

/** What a topic's text is called on this device until it is saved. */
export function noteDraft(reviewId: string, topic: ReviewTopic): string {
  return `ebbline review note ${reviewId} ${topic}`;
}

/** Waits a little for what is being saved; gives the topics typed on this device that the server does not have. */
export async function unsavedTopics(reviewId: string): Promise<readonly string[]> {
  for (let look = 0; ; look += 1) {
    const left = REVIEW_TOPICS.filter(({ topic }) => readDraft(noteDraft(reviewId, topic)) !== null);
    if (left.length === 0 || look === LOOKS) return left.map(({ label }) => label);
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_MS));
  }
}
