import { readCounted } from './countRow';
import { readInferred } from './inferred';
import type { TimeInput, TimeReading } from './timeInput';

/**
 * Gives every column of a system its time: by its count row where that pins anything, else by the columns alone. A
 * count row of which no syllable can be read (someone has begun to type it) leaves the columns to decide, and its
 * problems are told all the same.
 * @example
 * // 4/4 |0---2---3---5---|
 * readTimes({
 *   meter: { upper: 4, lower: 4 }, bars: [{ start: 1, end: 17 }], onsets: [1, 5, 9, 13], onsetEnds: [1, 5, 9, 13],
 *   secondDigits: new Set(), count: undefined, firstInPart: true, firstInSection: true,
 * }).columnTimes[5] // { n: 1, d: 1 }
 */
export function readTimes(input: TimeInput): TimeReading {
  if (input.count === undefined || input.count.length === 0) return readInferred(input, []);
  const counted = readCounted(input, input.count);
  return counted.pins > 0 ? counted.reading : readInferred(input, counted.reading.problems);
}
