import { readChordName } from '../../music/chord/readChordName';
import type { WrittenChord } from '../../music/chord/writtenChord';
import type { Fraction } from '../../music/fraction';
import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { System, TabDocument } from '../../notation/tabDocument';
import { slicesIn, type Slice } from '../change/slices';
import type { Range } from '../records';
import { timesOnBeats } from './timesOnBeats';

/** A name in a `chords` row, where and when it begins. */
export interface ChordEvent {
  readonly row: RowLine;
  readonly mark: RowMark;
  /** Its column; the bar's first where it stands over a bar sign. */
  readonly column: number;
  /** Quarter notes from the system's start. */
  readonly time: Fraction;
  /** Whether its columns give no time that could be counted, so that it goes to a beat. */
  readonly guessed: boolean;
  /** As players count bars. */
  readonly bar: number;
  /** Undefined where the name cannot be read; without a root it is `N.C.`. */
  readonly chord: WrittenChord | undefined;
  /** Why it cannot be read. */
  readonly problem: string | undefined;
}

/** A system with names of chords. */
export interface ChordSystem {
  readonly slice: Slice;
  readonly events: readonly ChordEvent[];
  /** Whether it has no strings, strings on which nothing stands, strings that leave some out, or tab. */
  readonly strings: 'none' | 'empty' | 'some' | 'tab';
}

/** The systems of a range that name chords, in the order of the text. */
export function chordSystems(document: TabDocument, range: Range | undefined): ChordSystem[] {
  return slicesIn(document, range).flatMap((slice): ChordSystem[] => {
    const { system } = slice;
    const events = eventsOf(document, slice);
    return events.length === 0 ? [] : [{ slice, events, strings: stringsOf(system) }];
  });
}

function eventsOf(document: TabDocument, { system, firstBar, lastBar }: Slice): ChordEvent[] {
  const { bars, rows } = system.reading;
  const reading = rows.find(({ row, marks }) => row === 'chords' && marks.length > 0);
  const row = reading && system.lines[reading.line];
  if (row?.kind !== 'row') return [];
  const first = document.placeOf(system).firstBar;
  const inBar = row.marks.map(({ column }) => {
    const at = bars.findIndex(({ endColumn }) => column < endColumn);
    return at < 0 ? bars.length - 1 : at;
  });
  const columns = row.marks.map(({ column }, i) => Math.max(column, bars[inBar[i] ?? 0]?.startColumn ?? 0));
  const times = timesOnBeats(system, columns, inBar);
  return row.marks.flatMap((mark, i): ChordEvent[] => {
    const bar = inBar[i] ?? 0;
    const time = times[i];
    if (bar < firstBar || bar > lastBar || !time) return [];
    const read = readChordName(mark.text);
    return [
      {
        row,
        mark,
        column: columns[i] ?? mark.column,
        ...time,
        bar: first + bar,
        chord: read.ok ? read.value : undefined,
        problem: read.ok ? undefined : read.error.message,
      },
    ];
  });
}

function stringsOf({ lines, reading, header }: System): ChordSystem['strings'] {
  const strings = lines.flatMap((line) => (line.kind === 'string' ? [line] : []));
  if (strings.length === 0) return 'none';
  const written = strings.some(({ tokens }) => tokens.some(({ kind }) => kind !== 'dash' && kind !== 'bar'));
  if (written) return 'tab';
  const all = new Set(reading.strings.map(({ index }) => index)).size === header.tuning.strings.length;
  return all && reading.strings.every(({ index }) => index >= 0) ? 'empty' : 'some';
}
