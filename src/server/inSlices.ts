import type { Later } from './diagnosticsPublisher';

/**
 * Works a long search off, one slice after the other; between two of them the messages that wait are heard. A worker
 * shares no memory with its client (VS Code offers extensions none), so this is how it hears that it is to stop.
 * @param told hears of each slice that was worked
 * @returns what the search found; undefined when it was cancelled
 */
export function inSlices<Step, Found>(
  search: Generator<Step, Found>,
  later: Later,
  cancellation: { readonly isCancellationRequested: boolean },
  told: (step: Step) => void,
): Promise<Found | undefined> {
  return new Promise((resolve, reject) => {
    const slice = (): void => {
      if (cancellation.isCancellationRequested) return resolve(undefined);
      try {
        const { done, value } = search.next();
        if (done === true) return resolve(value);
        told(value);
      } catch (error) {
        return reject(error instanceof Error ? error : new Error(String(error)));
      }
      later(slice);
    };
    later(slice);
  });
}
