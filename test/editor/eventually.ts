/** Waits for what an editor shows a moment later. */

const WAIT_MS = 30_000;
const PAUSE_MS = 200;
const LONGEST_ANSWER = 2000;

/** Asks again until the answer holds; what it last was is in the error. */
export async function eventually<T>(what: string, ask: () => Promise<T>, holds: (answer: T) => boolean): Promise<T> {
  const end = Date.now() + WAIT_MS;
  for (;;) {
    const answer = await ask();
    if (holds(answer)) return answer;
    if (Date.now() > end)
      throw new Error(
        `${what}: not within ${WAIT_MS / 1000} s; last seen: ${JSON.stringify(answer).slice(0, LONGEST_ANSWER)}`,
      );
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
}
