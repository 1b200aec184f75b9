import type { Tuning } from '../../instrument/tuning';
import { usualLabel } from '../../notation/labels';

/** Columns behind the first digit, so that a bar is four of them, as even as its beats. */
const REST = '---';

/** What stands before each string's line, the highest number first. */
export function labelsOf(tuning: Tuning): readonly string[] {
  return tuning.strings.map((_, index) => usualLabel(tuning, index));
}

/**
 * A shape as a system of its own: one column in one bar, the chord's name over it.
 * @param frets the highest string number first; null is not played, `innerMuted` strings are written as muted strokes
 * @example shapeTab('G5', [0, null], [], ['A', 'D']) // 'chords |G5\nD      |----|\nA      |0---|'
 */
export function shapeTab(
  name: string,
  frets: readonly (number | null)[],
  innerMuted: readonly number[],
  labels: readonly string[],
): string {
  const signs = frets.map((fret, i) => {
    if (fret !== null) return String(fret);
    return innerMuted.includes(frets.length - i) ? 'x' : '-';
  });
  const wide = Math.max(1, ...signs.map(({ length }) => length));
  const room = Math.max('chords'.length, ...labels.map(({ length }) => length)) + 1;
  const lines = signs.map((sign, i) => `${(labels[i] ?? '').padEnd(room)}|${sign.padEnd(wide, '-')}${REST}|`);
  return [`${'chords'.padEnd(room)}|${name}`, ...lines.reverse()].join('\n');
}
