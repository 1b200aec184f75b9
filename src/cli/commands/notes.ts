import { createLanguageService } from '../../service/languageService';
import type { NoteEntry } from '../../service/serviceApi';
import { alignedColumns } from '../alignedColumns';
import type { Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Lists every note of a file in time order. */
export const notes: Command = {
  name: 'notes',
  does: 'list every note with its pitch and time',
  operands: { word: 'FILE', help: 'a tab file, or - for standard input', many: false },
  options: [JSON_OPTION, TUNINGS],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const { text } = await readTextFile(asked.operands[0]);
    const service = createLanguageService();
    const entries = service.notes(service.open(text, settings));
    if (asked.flags.has('json')) output.json(entries);
    else if (entries.length === 0) output.report('There are no notes.\n');
    else output.text(tables(entries));
    return EXIT.done;
  },
};

const HEADINGS = ['bar', 'onset', 'length', 'string', 'fret', 'note', 'midi', 'line', 'column', 'techniques'];
const NUMBERS = [0, 1, 2, 3, 4, 6, 7, 8];

/** A table for each part; onsets and lengths in quarter notes. */
function tables(entries: readonly NoteEntry[]): string {
  const parts = new Map<string | null, NoteEntry[]>();
  for (const entry of entries) {
    const part = parts.get(entry.part);
    if (part) part.push(entry);
    else parts.set(entry.part, [entry]);
  }
  return [...parts]
    .map(([part, its]) => {
      const table = alignedColumns([HEADINGS, ...its.map(row)], NUMBERS);
      return `${part === null ? '' : `part: ${part}\n`}${table}\n`;
    })
    .join('\n');
}

function row(note: NoteEntry): string[] {
  return [
    String(note.bar),
    mixed(note.onsetFraction),
    mixed(note.durationFraction),
    String(note.string),
    note.fret === null ? 'x' : String(note.fret),
    note.name,
    note.midi === null ? '' : String(note.midi),
    String(note.line),
    String(note.column),
    note.techniques.map(({ sign, to }) => (to === undefined ? sign : `${sign} to ${to}`)).join(', '),
  ];
}

/**
 * A fraction as people write it.
 * @example mixed([7, 3]) // '2 1/3'
 */
function mixed([n, d]: readonly [number, number]): string {
  const whole = Math.trunc(n / d);
  const rest = Math.abs(n % d);
  if (rest === 0) return String(whole);
  return `${whole === 0 ? (n < 0 ? '-' : '') : `${whole} `}${rest}/${d}`;
}
