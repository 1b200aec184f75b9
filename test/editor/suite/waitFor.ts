/**
 * Asks again until there is an answer: an editor does most things a moment later.
 * @param ask gives undefined, false or an empty list as long as there is none
 * @param what for the message when the time is up
 * @param limit in milliseconds
 * @throws Error when there is none in time
 */
export async function waitFor<T>(
  ask: () => T | undefined | false | PromiseLike<T | undefined | false>,
  what: string,
  limit = 20_000,
): Promise<T> {
  for (const start = Date.now(); ;) {
    const answer = await ask();
    if (answer !== undefined && answer !== false && !(Array.isArray(answer) && answer.length === 0))
      return answer;
    if (Date.now() - start > limit) throw new Error(`No ${what} within ${limit / 1000} s.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
