import { widthOfText } from '../../notation/columns';
import type { SystemReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { movedRow, movedStringLine, type MovedLine } from './movedLine';
import { namesOfNotes, renamed } from './namesOfNotes';
import type { LineStops, NoteNamesAnswer, NoteNamesRequest } from './noteNamesAnswer';
import { widened } from './widened';

/** Said behind a full capo, since under it shapes are called by other names. */
const CAPO_REMARK = '   (the names are those that sound)';

/**
 * The text with the names of the sounding notes in place of frets, line by line as it is. Where a name takes more
 * columns than its fret, all lines of the system get them, so that it still lines up.
 */
export function noteNames(
  document: TabDocument,
  { octaves = false }: NoteNamesRequest = {},
): NoteNamesAnswer {
  const texts = Array.from({ length: document.lineCount }, (_, line) => document.line(line).text);
  const lines: LineStops[] = [];
  for (const system of document.systems) {
    movedSystem(system, octaves).forEach((moved, i) => {
      if (!moved) return;
      const line = system.firstLine + i;
      texts[line] = moved.text;
      if (moved.stops.length > 0) lines.push({ line, stops: moved.stops });
    });
  }
  for (const { fields, after } of document.fieldGroups)
    for (const { line, lineIndex } of fields)
      if (line.field === 'capo' && after.capo && !after.capo.strings)
        texts[lineIndex] = line.text.trimEnd() + CAPO_REMARK;
  return { text: texts.join('\n'), lines };
}

type Moved = readonly (MovedLine | undefined)[];

/** A reading is shared while its system stays as it is, wherever in the document that stands. */
const remembered = new WeakMap<SystemReading, Map<boolean, Moved>>();

function movedSystem(system: System, octaves: boolean): Moved {
  const known = remembered.get(system.reading) ?? new Map<boolean, Moved>();
  remembered.set(system.reading, known);
  const moved = known.get(octaves) ?? moveSystem(system, octaves);
  known.set(octaves, moved);
  return moved;
}

/** Undefined for a line that stays, such as a comment. */
function moveSystem({ lines, reading, header }: System, octaves: boolean): Moved {
  const named = lines.map((line, i) =>
    line.kind === 'string' ? renamed(line, namesOfNotes(reading, header, i, octaves)) : [],
  );
  const width = Math.max(0, ...lines.map((line) => ('width' in line ? line.width : 0)));
  const texts = named
    .flat()
    .flatMap(({ token: { column, width: own }, text }) =>
      text === undefined ? [] : [{ column, width: own, needs: widthOfText(text) }],
    );
  const to = widened(width, texts);
  return lines.map((line, i) => {
    if (line.kind === 'string') return movedStringLine(line, named[i] ?? [], to);
    return line.kind === 'row' ? movedRow(line, to) : undefined;
  });
}
