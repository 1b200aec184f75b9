import type { Header } from '../../notation/header';
import { fingerboardOf, soundingSpelling } from '../../notation/headerViews';
import type { System, TabDocument } from '../../notation/tabDocument';
import { whereInWords } from '../hover/beat';
import { momentAt } from '../hover/column';
import { stopWords } from '../hover/stopWords';
import { capital, listed, pitchText } from '../hover/text';
import { columnAt, noteAtCursor } from '../locate';
import type { Place } from '../records';
import { soundingAt, type SoundingNote } from '../sounding';
import type { NeckMoment, NeckNote, NeckSounding } from './neckAnswer';

const NO_COLUMN = 'Put the cursor on a column of a system of tab';

/** What sounds on the neck in the column under the cursor, and where else the note under the cursor lies. */
export function neckMoment(document: TabDocument, place: Place): NeckMoment {
  const system = document.systemAt(place.line);
  const column = system && columnAt(system, place);
  if (!system || column === undefined)
    return {
      where: '',
      sounding: [],
      words: `${NO_COLUMN} to see what sounds there`,
      note: null,
      writable: false,
      writeWords: `${NO_COLUMN} to put a fret there`,
    };
  const time = momentAt(system, column);
  const where = whereInWords(document, system, time);
  const sounding = soundingAt(document, system, time).filter(({ midis }) => midis.length > 0);
  return {
    where: capital(where),
    sounding: sounding.flatMap(soundingPlace),
    words: soundingWords(sounding, system),
    note: noteUnder(document, place, system),
    ...writing(system, column, where),
  };
}

function soundingPlace({ note, begins }: SoundingNote): NeckSounding[] {
  const { string, fret, touched } = note;
  if (touched !== undefined && note.kind === 'natural-harmonic')
    return [{ string, fret: touched, how: 'harmonic' }];
  return fret === undefined ? [] : [{ string, fret, how: begins ? 'struck' : 'rings' }];
}

function soundingWords(sounding: readonly SoundingNote[], { header }: System): string {
  if (sounding.length === 0) return 'Nothing sounds here';
  const spelling = soundingSpelling(header);
  const told = sounding.map(({ note, midis, begins }) => {
    const pitch = listed(midis.map((midi) => pitchText(midi, spelling)));
    return `${pitch} on string ${note.string}, ${stopWords(note)}${begins ? '' : ', ringing'}`;
  });
  return `Sounds here: ${told.join('; ')}`;
}

/** The pitch of the note that the cursor stands on, as it is struck, and every place of the neck that gives it. */
function noteUnder(document: TabDocument, place: Place, { header }: System): NeckNote | null {
  const pitch = noteAtCursor(document, place)?.note.pitches[0];
  if (!pitch) return null;
  const places = placesOf(Math.round(pitch.midi), header);
  const name = pitchText(pitch.midi, soundingSpelling(header));
  const told = places.map(({ string, fret }) =>
    fret === 0 ? `string ${string} open` : `string ${string} fret ${fret}`,
  );
  const words =
    told.length === 0 ? `${name} lies at no fret of this neck` : `${name} lies at ${listed(told)}`;
  return { name, places, words };
}

function placesOf(midi: number, header: Header): NeckNote['places'] {
  const board = fingerboardOf(header);
  const count = header.tuning.strings.length;
  return Array.from({ length: count }, (_, at) => at + 1).flatMap((string) => {
    const fret = board.fretFor(count - string, midi);
    return fret === undefined ? [] : [{ string, fret }];
  });
}

function writing(
  { reading }: System,
  column: number,
  where: string,
): Pick<NeckMoment, 'writable' | 'writeWords'> {
  const inBar = reading.bars.some(
    ({ startColumn, endColumn }) => startColumn <= column && column < endColumn,
  );
  return inBar
    ? { writable: true, writeWords: `A fret is put at ${where}` }
    : {
        writable: false,
        writeWords: 'Put the cursor beside the bar sign, on a column of the bar, to put a fret there',
      };
}
