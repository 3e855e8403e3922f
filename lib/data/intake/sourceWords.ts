import "server-only";
import type { Transaction } from "@/lib/data/change";
import { LearnedWords } from "@/lib/intake/learnedWords";

/** What people said the source of a file means by its words; none for a file of no source. */
export async function loadWords(tx: Transaction, sourceId: string | null): Promise<LearnedWords> {
  const rows =
    sourceId === null
      ? []
      : await tx.learnedWord.findMany({
          where: { sourceId },
          select: { kind: true, within: true, written: true, meaning: true },
        });
  return new LearnedWords(rows);
}
