import { formatTuningNotes } from '../instrument/tuningFormat';
import { formatNoteName } from '../music/noteName';
import type { TabDocument } from '../notation/tabDocument';
import type { InlayHint, Range } from './records';

/**
 * After the value of `tuning`, the notes with their octaves where the text leaves them unsaid. Nothing inside a
 * system: a hint there would move its columns.
 */
export function inlayHints(document: TabDocument, range: Range): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  for (const { fields, after } of document.fieldGroups) {
    for (const { line, lineIndex } of fields) {
      if (line.field !== 'tuning' || lineIndex < range.start.line || lineIndex > range.end.line) continue;
      const { tuning } = after;
      // A value that could not be read, or that a later one overrules, is not the tuning in force.
      if (tuning.text !== line.value || line.value === '') continue;
      const notes = formatTuningNotes(tuning);
      const single = tuning.strings.map(({ pitches }) => formatNoteName(pitches[0].name)).join(' ');
      if (says(line.value, notes) || says(line.value, single)) continue;
      hints.push({
        place: { line: lineIndex, character: line.valueStart + line.value.length },
        label: notes,
        tooltip: 'The strings with their octaves, low string first, as Pegbox reads this value.',
      });
    }
  }
  return hints;
}

/** Whether a value has these notes with their octaves, however they are set apart. */
function says(value: string, notes: string): boolean {
  const plain = value
    .replace(/♯/g, '#')
    .replace(/♭/g, 'b')
    .replace(/[\s,;]+|-(?!\d+(?:\.\d+)?c)/g, ' ')
    .toLowerCase();
  return plain.includes(notes.toLowerCase());
}
