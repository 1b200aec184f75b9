import type { RowLine } from '../../notation/parsedLine';
import type { PlacedMark } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { lineRange } from '../locate';
import type { CompletionItem, Place, Settings, TextEdit } from '../records';
import { signsOf } from '../shapes/insertShape';
import type { ShapeAnswer } from '../shapes/shapesAnswer';
import { shapesUnder } from '../shapes/shapes';
import { putAt } from '../typing/putFrets';

/**
 * The shapes of the chord whose name the cursor touches in a `chords` row: taking one writes it into the strings at the
 * name's column. Nothing where no name is touched, where it cannot be read, and in rows without strings.
 */
export function chordShapeItems(
  document: TabDocument,
  { line, character }: Place,
  row: RowLine,
  settings: Settings,
): readonly CompletionItem[] {
  const system = document.systemAt(line);
  if (!system || row.row !== 'chords' || system.reading.strings.length === 0) return [];
  const mark = system.reading.rows
    .find((reading) => reading.line === line - system.firstLine)
    ?.marks.find(({ start, end }) => start <= character && character <= end);
  if (!mark) return [];
  const answer = shapesUnder(system.header, { chord: mark.text }, settings);
  if ('error' in answer) return [];
  return answer.shapes.flatMap((shape, i) => {
    const put = putAt(system, mark.column, signsOf(shape.frets));
    if ('error' in put) return [];
    return [
      {
        label: `${mark.text} ${shape.text}`,
        detail: briefly(shape),
        documentation: shape.words,
        ...editsOf(system, line, mark, put.lines),
        sortText: `0${String(i).padStart(4, '0')}`,
        kind: 'value' as const,
      },
    ];
  });
}

/** So short that an editor's list has room for the frets beside it. */
function briefly({ kind, rootInBass, bass, position }: ShapeAnswer): string {
  const place = position === null ? 'open' : `position ${position}`;
  return [kind, ...(rootInBass ? [] : [`${bass} in the bass`]), place].join(', ');
}

/**
 * What turns a system into new lines, as an edit of the line with the name and edits of the others. Where the row itself
 * stays the name is written once more; else the whole row is, and the cursor's line is what an editor compares with.
 */
function editsOf(
  { lines: old, firstLine }: System,
  line: number,
  mark: PlacedMark,
  lines: readonly string[],
): Pick<CompletionItem, 'edit' | 'filterText' | 'moreEdits'> {
  // A count row may have come above the others, which else stand in their order.
  const added = lines.slice(0, lines.length - old.length).map((text) => `${text}\n`);
  const moreEdits: TextEdit[] = [];
  let edit: TextEdit = { range: lineRange(line, mark.start, mark.end), newText: mark.text };
  let filterText: string | undefined;
  old.forEach(({ text }, i) => {
    const now = (i === 0 ? added.join('') : '') + (lines[i + added.length] ?? '');
    if (now === text) return;
    const whole = { range: lineRange(firstLine + i, 0, text.length), newText: now };
    if (firstLine + i !== line) moreEdits.push(whole);
    else [edit, filterText] = [whole, text];
  });
  return { edit, moreEdits, ...(filterText !== undefined && { filterText }) };
}
