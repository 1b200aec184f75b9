import { widthOfText } from '../../notation/columns';
import type { ChordChart } from './songAnswer';

/** A chart as lines of plain text that line up: name, frets from the lowest-placed string up, fingers, bars. */
export function chartText({
  title,
  tunings,
  chords,
}: Pick<ChordChart, 'title' | 'tunings' | 'chords'>): string {
  const several = tunings.length > 1;
  const rows = chords.map(({ name, sounds, part, tuning, bars, shape, reason }) => [
    sounds === null || sounds === name ? name : `${name} (sounds ${sounds})`,
    shape ? shape.text : 'none',
    shape ? fingersText(shape.fingers) : '',
    `${part === null ? '' : `${part}, `}${bars.length === 1 ? 'bar' : 'bars'} ${bars.join(', ')}`,
    [several ? tuning : '', shape === null ? reason : shape.leftOut === '' ? '' : `without ${shape.leftOut}`]
      .filter((text) => text !== '')
      .join('; '),
  ]);
  const table = aligned([['chord', 'frets', 'fingers', 'where', ''], ...rows]);
  const head = [...(title === null ? [] : [title]), ...(several ? [] : tunings)];
  return `${head.join('\n')}\n\n${table}\n`;
}

/** `- 1 2 - 3 -`: a dash where no finger stops the string. */
function fingersText(fingers: readonly (number | string | null)[]): string {
  return fingers.every((finger) => finger === null || finger === 0)
    ? ''
    : fingers.map((finger) => (finger === null || finger === 0 ? '-' : String(finger))).join(' ');
}

function aligned(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => widthOfText(row[column] ?? ''))),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell + ' '.repeat((widths[column] ?? 0) - widthOfText(cell)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
