/**
 * Pieces as the body of an answer: read only as fast as they are fetched, and no further once nobody fetches.
 *
 * @param ended Called once, after the last piece or when the reader has gone.
 */
export function streamOf(
  pieces: AsyncGenerator<Uint8Array>,
  ended: () => Promise<void> | void = () => undefined,
): ReadableStream<Uint8Array> {
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      try {
        const { done, value } = await pieces.next();
        if (!done) return controller.enqueue(value);
        await ended();
        controller.close();
      } catch (error) {
        await ended();
        throw error;
      }
    },
    async cancel() {
      // What is being read ends with its source; waiting for it would wait for the whole list.
      await ended();
      void pieces.return(undefined).catch(() => undefined);
    },
  });
}
