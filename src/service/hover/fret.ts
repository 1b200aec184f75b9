import { harmonicAt } from '../../music/harmonics';
import { intervalWords } from '../../music/interval';
import { degreeInKey, formatKey } from '../../music/key';
import { STANDARD_PITCH } from '../../music/frequency';
import type { FretReading, SoundingFret } from '../../instrument/sounding';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, playedSpelling, soundingSpelling } from '../../notation/headerViews';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { timingWords, whereInWords } from './beat';
import { columnInShort } from './column';
import { stopWords } from './stopWords';
import { techniqueLines } from './techniques';
import { capital, centsOff, hertz, lines, listed, paragraphs, pitchText } from './text';

/** What a note is: its pitch first, then where it is played, what it is in the key, how it is played and when. */
export function fretHover(document: TabDocument, system: System, note: NoteReading): string {
  const { header, reading } = system;
  const index = header.tuning.strings.length - note.string;
  const read = note.fret === undefined ? undefined : fingerboardOf(header).read(index, note.fret);
  return paragraphs(
    lines(
      firstLine(note, header),
      ...(read?.ok && note.pitches.length > 0
        ? soundLines(note, read, header)
        : silenceLines(note, read, header)),
      ...techniqueLines(note, reading, header),
    ),
    lines(timeLine(document, system, note), columnInShort(document, system, note.onset)),
  );
}

/** `**F#4** · string 1, fret 2`. */
function firstLine(note: NoteReading, header: Header): string {
  const spelling = soundingSpelling(header);
  const names = note.pitches.map(({ midi }) => {
    const cents = centsOff(midi);
    const text = pitchText(midi, spelling);
    return `**${text.slice(0, text.length - cents.length)}**${cents}`;
  });
  const what = names.length > 0 ? listed(names) : note.kind === 'muted' ? '**x**' : '**No pitch**';
  const ghost = note.ghost ? ', ghost note' : '';
  const string = note.string > 0 ? `string ${note.string}` : 'no string of this tuning';
  return `${what} · ${string}, ${stopWords(note)}${ghost}`;
}

function soundLines(note: NoteReading, read: SoundingFret, header: Header): readonly (string | undefined)[] {
  const midis = note.pitches.map(({ midi }) => midi);
  const [midi = 0] = midis;
  const frequencies = listed(midis.map((each) => hertz(each, header.referencePitch)));
  const reference = header.referencePitch === STANDARD_PITCH ? '' : ` at A4 = ${header.referencePitch} Hz`;
  return [
    playedLine(midis, header),
    `${frequencies}${reference}, ${aboveOpen(midi - (read.openMidis[0] ?? midi))}`,
    degreeLine(midi, header),
    harmonicLine(note, read, header),
    zeroLine(read, header),
  ];
}

/** The name without the full capo, as the player thinks of it. */
function playedLine(midis: readonly number[], header: Header): string | undefined {
  const shift = capoShift(header);
  if (shift === 0) return undefined;
  const names = midis.map((midi) => pitchText(midi - shift, playedSpelling(header)));
  return `As played: ${listed(names)}`;
}

function aboveOpen(distance: number): string {
  return Math.round(distance) === 0 ? 'the open string' : `${intervalWords(distance)} above the open string`;
}

function degreeLine(midi: number, header: Header): string | undefined {
  const { key } = soundingSpelling(header);
  if (!key || !header.key) return undefined;
  const degree = degreeInKey(key, midi);
  const played = capoShift(header) === 0 ? '' : `, played as ${formatKey(header.key)}`;
  return `${capital(degree.words)} (${degree.text}) in ${formatKey(key)}${played}`;
}

const PARTIALS = ['', '', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'] as const;

function harmonicLine(note: NoteReading, read: SoundingFret, header: Header): string | undefined {
  if (note.touched === undefined) return undefined;
  const index = header.tuning.strings.length - note.string;
  const node = fingerboardOf(header).absoluteFret(index, note.touched) - read.stopFret;
  const harmonic = harmonicAt(Math.round(node * 1000) / 1000);
  if (harmonic?.kind !== 'harmonic') return undefined;
  const from = note.kind === 'artificial-harmonic' ? 'stopped' : 'open';
  return `${capital(PARTIALS[harmonic.partial] ?? '')} partial of the ${from} string: ${harmonic.partial} times its frequency`;
}

/** Which zero the numbers of the string count from. */
export function zeroLine({ zero }: Pick<SoundingFret, 'zero'>, header: Header): string {
  const capo = header.capo?.fret ?? 0;
  switch (zero) {
    case 'nut':
      return header.capo?.strings
        ? 'Counted from the nut; the partial capo leaves this string free'
        : 'Counted from the nut';
    case 'capo':
      return `Counted from the capo at fret ${capo}`;
    case 'string start':
      return capo > 0 && !header.capo?.strings
        ? `0 is the open string, which begins up the neck; numbers count from the capo at fret ${capo}`
        : '0 is the open string, which begins up the neck; other numbers count from the nut';
    case 'partial capo':
      return `Under the partial capo at fret ${capo}: 0 is the capo, other numbers count from the nut`;
  }
}

/** Why nothing sounds. */
function silenceLines(note: NoteReading, read: FretReading | undefined, header: Header): readonly string[] {
  if (note.kind === 'muted') return ['A muted stroke, without pitch'];
  if (!read || read.ok)
    return note.touched === undefined ? [] : [`No natural harmonic lies at ${note.touched}`];
  switch (read.reason) {
    case 'past-neck':
      return [`Past the neck: it has ${header.frets} frets, this string can be played up to ${read.most}`];
    case 'below-capo':
      return [`Below the partial capo at fret ${read.limit}`];
    case 'below-string-start':
      return [`The string begins at fret ${read.limit}: nothing lies below`];
    case 'no-such-string':
      return [`The tuning has ${header.tuning.strings.length} strings`];
  }
}

function timeLine(document: TabDocument, system: System, note: NoteReading): string {
  const where = capital(whereInWords(document, system, note.onset));
  return `${where} · ${timingWords(system)}`;
}
