import { nameChord, type ChordName } from '../../music/chord/nameChord';
import { ordinal, type Degree } from '../../music/chord/degree';
import { readChordName } from '../../music/chord/readChordName';
import { writtenToneName, type WrittenChord } from '../../music/chord/writtenChord';
import { formatPitchName, pitchClassOf } from '../../music/noteName';
import { playedContext } from '../../notation/chordContext';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf, playedSpelling } from '../../notation/headerViews';
import type { Shape } from '../../playing/shapes/shape';
import { drawnString, partialCapo } from '../grip/grip';
import { gripPicture } from '../grip/gripPicture';
import { listed, pitchText } from '../hover/text';
import type { ShapeAnswer } from './shapesAnswer';
import { labelsOf, shapeTab } from './shapeTab';
import { shapeAlt, shapeShort, shapeWords } from './shapeWords';

/** A shape as it is told under a header: what it sounds, its words, its picture, its tab. */
export function shapeAnswer(shape: Shape, written: WrittenChord | undefined, header: Header): ShapeAnswer {
  const count = shape.frets.length;
  const frets = shape.frets.map((fret) => fret ?? null);
  const isSlide = header.fretting === 'slide';
  const { grip } = shape;
  const fingers = frets.map((fret, index) => {
    if (fret === null) return null;
    const finger = grip.placements.find(({ string }) => string === count - index)?.finger ?? 0;
    return isSlide && finger !== 0 ? null : finger;
  });
  const stopped = grip.placements.filter(({ finger }) => finger !== 0);
  const numbers = stopped.map(({ string }) => string);
  const [first] = stopped;
  const bar =
    isSlide && first ? { fret: first.fret, from: Math.max(...numbers), to: Math.min(...numbers) } : null;
  const sounding = soundsOf(shape, header);
  const naming = nameChord(
    sounding.flatMap(({ midis }) => midis),
    playedContext(header),
  );
  const name = nameFor(naming.names, written);
  const bass = naming.notes[0];
  const told = {
    frets,
    text: frets.map((fret) => fret ?? 'x').join(' '),
    fingers,
    barres: grip.barres,
    bar,
    name: name?.name ?? written?.text ?? listed(naming.notes.map(formatPitchName)),
    otherNames: naming.names.filter((one) => one !== name).map((one) => one.name),
    notes: frets.map((_, index) => {
      const own = sounding.find((one) => one.index === index);
      return own
        ? own.midis.map((midi) => pitchText(midi, playedSpelling(header), naming.notes)).join('/')
        : null;
    }),
    tones: naming.notes.map(formatPitchName),
    kind: shape.leftOut === 0 ? ('full' as const) : ('reduced' as const),
    leftOut: leftOutWords(shape, written, header),
    openStrings: grip.placements
      .filter(({ fret, finger }) => fret === 0 && finger === 0)
      .map(({ string }) => string),
    innerMuted: frets.flatMap((_, index) => (shape.innerMuted & (1 << index) ? [count - index] : [])),
    position: stopped.length > 0 ? grip.position : null,
    millimetres: grip.millimetres,
    rootInBass:
      written?.root === undefined || bass === undefined || pitchClassOf(bass) === pitchClassOf(written.root),
    bass: bass ? formatPitchName(bass) : '',
    cost: shape.cost,
  };
  const alt = shapeAlt(told, header);
  const isBassAsked = written?.bass !== undefined;
  return {
    ...told,
    short: shapeShort(told, isBassAsked),
    words: shapeWords(told, grip, isBassAsked),
    svg: gripPicture({
      strings: frets.map((fret, index) =>
        drawnString(
          {
            string: count - index,
            state: fret === null ? 'silent' : fret === 0 ? 'open' : 'stopped',
            fret,
            finger: fingers[index] ?? null,
          },
          header,
        ),
      ),
      barres: grip.barres,
      bar: bar ?? undefined,
      capo: partialCapo(header),
      title: alt,
    }),
    alt,
    tab: shapeTab(written?.text ?? told.name, frets, told.innerMuted, labelsOf(header.tuning)),
  };
}

/** The name on the root that was asked for, else the likeliest one. */
function nameFor(names: readonly ChordName[], written: WrittenChord | undefined): ChordName | undefined {
  const root = written?.root && pitchClassOf(written.root);
  const own = names.filter((name) => pitchClassOf(name.root) === root);
  // Two tones are first named as an interval, which is no answer to a chord.
  return own.find(({ name }) => readChordName(name).ok) ?? own[0] ?? names[0];
}

/** What each string sounds as played, low-placed string first. */
function soundsOf({ frets }: Shape, header: Header): { index: number; midis: readonly number[] }[] {
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  return frets.flatMap((fret, index) => {
    const midis = fret === undefined ? undefined : board.pitches(index, fret);
    return midis ? [{ index, midis: midis.map((midi) => midi - shift) }] : [];
  });
}

/** `the fifth, G`; `the ninth, D, and the eleventh, F`. */
function leftOutWords({ leftOut }: Shape, written: WrittenChord | undefined, header: Header): string {
  if (!written?.root || leftOut === 0) return '';
  const root = written.root;
  const shift = capoShift(header);
  let rest = leftOut;
  const words: string[] = [];
  const tell = (degree: string, name: string, pitchClass: number): void => {
    const bit = 1 << ((pitchClass + shift) % 12);
    if (!(rest & bit)) return;
    rest &= ~bit;
    words.push(`the ${degree}, ${name}`);
  };
  tell('root', formatPitchName(root), pitchClassOf(root));
  for (const { degree } of written.tones) {
    const name = writtenToneName(root, degree);
    tell(degreeWords(degree), formatPitchName(name), pitchClassOf(name));
  }
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')}, and ${words.at(-1) ?? ''}`;
}

/** `fifth`, `flat fifth`, `sharp ninth`: a third or a seventh is told by the chord's name. */
function degreeWords({ number, text }: Degree): string {
  if (number < 5 || number === 7 || /^\d/.test(text)) return ordinal(number);
  return `${text.startsWith('b') ? 'flat' : 'sharp'} ${ordinal(number)}`;
}
