import type { Slices } from './slices';
import type { SuitStep } from './suitAnswer';

/** Runs a piece of work, telling of progress whenever it hands back. */
export function* told<T>(
  work: Generator<void, T>,
  step: () => SuitStep,
  slices: Slices,
): Generator<SuitStep, T> {
  let result = work.next();
  while (!result.done) {
    yield step();
    slices.again();
    result = work.next();
  }
  return result.value;
}
