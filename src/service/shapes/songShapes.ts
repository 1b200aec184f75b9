import { compare, type Fraction } from '../../music/fraction';
import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import { playedContext } from '../../notation/chordContext';
import { formatCapo } from '../../instrument/capo';
import { formatTuningNotes } from '../../instrument/tuningFormat';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { NoteReading } from '../../notation/reading';
import type { Range, System, TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { soundingAt } from '../sounding';
import { shapeKinUnder } from './shapeKin';
import type { SongChord, SongShapesAnswer } from './shapesAnswer';

/** A chord at its place. */
interface Met {
  readonly name: string;
  readonly header: Header;
  readonly part: string | null;
  readonly bar: number;
  readonly line: number;
  readonly column: number;
}

/**
 * For each chord of a piece the everyday shape of the usual tuning and the nearest one here, with what each string must
 * do: chords as the `chords` rows name them, else as what is struck together is named.
 * @param range lines to look at; undefined is the whole document
 */
export function songShapes(
  document: TabDocument,
  range: Range | undefined,
  settings: Settings,
): SongShapesAnswer | ServiceError {
  const systems = document.systems.filter(
    ({ firstLine, lines }) =>
      !range || (firstLine <= range.end.line && firstLine + lines.length > range.start.line),
  );
  const written = systems.flatMap((system) => writtenChords(document, system));
  const from = written.length > 0 ? 'row' : 'tab';
  const met = from === 'row' ? written : systems.flatMap((system) => struckChords(document, system));
  if (met.length === 0)
    return {
      error:
        'No chord is written or struck here: write a row of chords over the tab, such as chords |G |D/F# |.',
    };
  const byKey = new Map<string, Met[]>();
  for (const one of met) {
    const key = `${one.name}|${one.part ?? ''}|${neckKey(one.header)}`;
    const list = byKey.get(key);
    if (list) list.push(one);
    else byKey.set(key, [one]);
  }
  return {
    from,
    chords: [...byKey.values()].flatMap((list) => songChord(list, settings)),
    remarks:
      from === 'tab' ? ['No chord is named over the tab: these are named from what is struck together.'] : [],
  };
}

function songChord(list: readonly Met[], settings: Settings): readonly SongChord[] {
  const [first] = list;
  if (!first) return [];
  const { name, part, line, column, header } = first;
  const kin = shapeKinUnder(header, { chord: name }, settings);
  const bars = [...new Set(list.map(({ bar }) => bar))];
  const isRead = !('error' in kin);
  return [
    { chord: name, part, bars, line, column, kin: isRead ? kin : null, problem: isRead ? null : kin.error },
  ];
}

function writtenChords(document: TabDocument, system: System): readonly Met[] {
  return system.reading.rows.flatMap(({ row, line, marks }) =>
    row !== 'chords'
      ? []
      : marks.flatMap(({ text, onset, start }) => {
          const read = readChordName(text);
          // N.C. asks for silence.
          if (read.ok && !read.value.root) return [];
          return [metAt(document, system, text, onset, line, start)];
        }),
  );
}

/** So many notes that are struck together make a chord. */
const CHORD = 3;

function struckChords(document: TabDocument, system: System): readonly Met[] {
  const { notes } = system.reading;
  const firsts = notes.filter((note, i) => {
    const before = notes[i - 1];
    return !before || compare(before.onset, note.onset) !== 0;
  });
  const shift = capoShift(system.header);
  return firsts.flatMap((note: NoteReading) => {
    const struck = soundingAt(document, system, note.onset).filter(
      ({ begins, midis }) => begins && midis.length > 0,
    );
    if (struck.length < CHORD) return [];
    const naming = nameChord(
      struck.flatMap(({ midis }) => midis.map((midi) => midi - shift)),
      playedContext(system.header),
    );
    const name = naming.kind === 'chord' || naming.kind === 'power' ? naming.names[0]?.name : undefined;
    if (name === undefined || !readChordName(name).ok) return [];
    return [metAt(document, system, name, note.onset, note.line, note.start)];
  });
}

function metAt(
  document: TabDocument,
  system: System,
  name: string,
  onset: Fraction,
  line: number,
  start: number,
): Met {
  const { part, firstBar } = document.placeOf(system);
  const bar = system.reading.bars.findLastIndex((one) => compare(one.onset, onset) <= 0);
  return {
    name,
    header: system.header,
    part: part ?? null,
    bar: firstBar + Math.max(0, bar),
    line: system.firstLine + line + 1,
    column: start + 1,
  };
}

function neckKey({ instrument, tuning, capo, frets, fretting }: Header): string {
  return [instrument.name, formatTuningNotes(tuning), capo ? formatCapo(capo) : '', frets, fretting].join(
    '|',
  );
}
