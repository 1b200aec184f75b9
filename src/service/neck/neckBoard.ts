import { fretDistance } from '../../instrument/neck';
import { stringNumber } from '../../instrument/tuning';
import { intervalWords } from '../../music/interval';
import { degreeInKey } from '../../music/key';
import { formatPitchName, pitchClassOf, type PitchName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, soundingSpelling } from '../../notation/headerViews';
import { capital, listed, pitchText } from '../hover/text';
import type { ServiceError } from '../serviceApi';
import { scaleSets, scaleSetsInWords } from '../sheet/scaleSets';
import type { NeckBoard, NeckCapo, NeckLabel, NeckPlace, NeckRequest, NeckString } from './neckAnswer';
import { tonesOf, type MarkedTones } from './neckTones';

/** An octave up a string everything comes again, so frets to copy are told no farther. */
const OCTAVE = 12;

/**
 * Short names of the intervals of up to eleven half steps, as the trade writes them: P perfect, M major, m minor, TT the
 * tritone (common practice, no source).
 */
const INTERVALS = ['P1', 'm2', 'M2', 'm3', 'M3', 'P4', 'TT', 'P5', 'm6', 'M6', 'm7', 'M7'] as const;

/** The neck of the fields in force, with every place that can be played; one sentence where the request cannot be read. */
export function neckBoard(header: Header, request: NeckRequest): NeckBoard | ServiceError {
  const tones = tonesOf(request, header);
  if ('error' in tones) return tones;
  const first = capoShift(header);
  const last = lastCell(header, request);
  const wires = Array.from({ length: last - first + 1 }, (_, at) => round(fretDistance(first + at, 1)));
  const numbers = wires.map((_, at) => at);
  const frame: Frame = { header, tones, last, root: rootOf(tones, header) };
  return {
    id: boardId(header, request),
    title: titleOf(header),
    facts: factsOf(header, frame),
    strings: Array.from({ length: header.tuning.strings.length }, (_, at) =>
      neckString(header.tuning.strings.length - 1 - at, frame),
    ),
    first,
    last,
    numbers,
    wires,
    capo: capoOf(header),
    tones: {
      kind: tones.kind,
      name: tones.name,
      notes: tones.notes.map(formatPitchName),
      sets: setsOf(header, tones, last - first),
    },
    degreesIn: tones.degreesIn ?? null,
    root: { note: formatPitchName(frame.root.note), words: frame.root.words },
  };
}

/** What determines a board: whoever has one with the same id need not be sent another. */
export function boardId(header: Header, request: NeckRequest): string {
  const { tuning, capo, frets, key } = header;
  const { scale = null, chord = null } = request;
  return JSON.stringify([tuning, capo ?? null, frets, key ?? null, scale, chord, lastCell(header, request)]);
}

function lastCell(header: Header, request: NeckRequest): number {
  return Math.min(header.frets, capoShift(header) + (request.frets ?? header.frets));
}

interface Frame {
  readonly header: Header;
  readonly tones: MarkedTones;
  readonly last: number;
  readonly root: Root;
}

interface Root {
  readonly note: PitchName;
  readonly words: string;
}

/** The root of what is marked, else the tonic, else the lowest open string. */
function rootOf({ name, notes: [first], key }: MarkedTones, header: Header): Root {
  if (first) return { note: first, words: `the root of ${name}` };
  if (key) return { note: key.tonic, words: 'the root of the key' };
  const board = fingerboardOf(header);
  const opens = header.tuning.strings.map((_, index) => board.openMidi(index));
  const lowest = Math.min(...opens);
  const number = stringNumber(header.tuning, opens.indexOf(lowest));
  return { note: spellMidi(lowest, soundingSpelling(header)), words: `open string ${number}, the lowest` };
}

function neckString(index: number, frame: Frame): NeckString {
  const { header, tones, last } = frame;
  const board = fingerboardOf(header);
  const string = header.tuning.strings[index];
  const number = stringNumber(header.tuning, index);
  const places: NeckPlace[] = [];
  for (let fret = 0; fret <= board.frets; fret++) {
    const read = board.read(index, fret);
    if (!read.ok || read.stopFret > last) continue;
    // Under a partial capo the capo's own number is the open string once more.
    if (places.some(({ cell }) => cell === read.stopFret)) continue;
    places.push(neckPlace({ number, fret, cell: read.stopFret, midis: read.midis }, frame));
  }
  const spelling = soundingSpelling(header);
  const open = board.pitches(index, 0) ?? [];
  return {
    number,
    note: listed(open.map((midi) => pitchText(midi, spelling, tones.notes))),
    course: string?.pitches.length === 2,
    begins: string?.firstFret ?? 0,
    places,
  };
}

interface Stop {
  readonly number: number;
  readonly fret: number;
  readonly cell: number;
  readonly midis: readonly number[];
}

function neckPlace({ number, fret, cell, midis }: Stop, { header, tones, root }: Frame): NeckPlace {
  const spelling = soundingSpelling(header);
  const [midi = 0] = midis;
  const pitchClass = ((Math.round(midi) % 12) + 12) % 12;
  const own = tones.notes.find((name) => pitchClassOf(name) === pitchClass);
  const note = formatPitchName(own ?? spellMidi(midi, spelling));
  const degree = tones.key && degreeInKey(tones.key, midi);
  return {
    cell,
    fret,
    note,
    pitch: listed(midis.map((each) => pitchText(each, spelling, tones.notes))),
    name: fret === 0 ? `string ${number} open, ${note}` : `string ${number} fret ${fret}, ${note}`,
    degree: degree ? { short: degree.text, words: degree.words } : null,
    interval: intervalOf(pitchClass - pitchClassOf(root.note)),
    marked: tones.notes.length === 0 || own !== undefined,
    root: pitchClass === pitchClassOf(root.note) && tones.notes.length > 0,
  };
}

function intervalOf(distance: number): NeckLabel {
  const halfSteps = ((distance % 12) + 12) % 12;
  return { short: INTERVALS[halfSteps] ?? '', words: intervalWords(halfSteps) };
}

function titleOf({ tuning }: Header): string {
  const notes = tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => `${formatPitchName(name)}${name.octave}`).join('/'))
    .join(' ');
  return tuning.name === undefined ? notes : `${tuning.name}: ${notes}`;
}

function factsOf(header: Header, { tones }: Frame): readonly string[] {
  const facts: string[] = [];
  const capo = capoOf(header);
  if (capo) facts.push(capo.words);
  if (capoShift(header) > 0) facts.push('Frets count from the capo, and notes are named as they sound');
  else if (capo) facts.push('Frets count from the nut');
  const short = header.tuning.strings.flatMap(({ firstFret }, index) =>
    firstFret > 0 ? [`String ${stringNumber(header.tuning, index)} begins at fret ${firstFret}`] : [],
  );
  facts.push(...short);
  if (tones.kind === 'none') facts.push('No key is written, so every note is shown alike');
  return facts;
}

function capoOf({ capo, tuning }: Header): NeckCapo | null {
  if (!capo) return null;
  const { fret, strings } = capo;
  const words = `Capo at fret ${fret}${strings ? ` on ${strings.length === 1 ? 'string' : 'strings'} ${listed(strings.map(String))}` : ''}`;
  if (!strings) return { fret, from: tuning.strings.length, to: 1, words: capital(words) };
  return { fret, from: Math.max(...strings), to: Math.min(...strings), words };
}

function setsOf(header: Header, { notes }: MarkedTones, shown: number): string {
  if (notes.length === 0) return '';
  const sets = scaleSets(fingerboardOf(header), notes.map(pitchClassOf), Math.min(shown, OCTAVE));
  return scaleSetsInWords(sets, 'notes');
}

/** Six digits are a thousandth of a millimetre on any neck. */
function round(share: number): number {
  return Math.round(share * 1e6) / 1e6;
}
