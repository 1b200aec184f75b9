import { intervalWords } from '../interval';
import { isInKey, type Key } from '../key';
import { fifthsOf, nameAtFifths, simplify } from '../lineOfFifths';
import { formatPitchName, pitchClassOf, type PitchName } from '../noteName';
import { likeliest, type Candidate, type RootPreference } from './candidates';
import {
  chordName,
  naming,
  NO_NAMES,
  SILENCE,
  type ChordContext,
  type ChordName,
  type ChordNaming,
} from './chordNaming';
import { foreignName, rootFifths, toneName } from './chordSpelling';
import { degree, ordinal } from './degree';

/**
 * Names a set of pitch classes over a bass.
 * @param mask bit n is the pitch class n; not empty
 * @param weak whether the bass only sounds lowest in a re-entrant tuning
 * @param spread of one pitch class 0 for one note, 1 unison, 2 octaves; of two the half steps between their lowest
 */
export function nameSet(
  mask: number,
  bass: number,
  weak: boolean,
  spread: number,
  context: ChordContext,
): ChordNaming {
  const classes = pitchClassesFrom(mask, bass);
  if (classes.length === 1) return nameNote(bass, spread, context);
  const [, other = bass] = classes;
  if (classes.length === 2) return nameTwo(bass, other, weak, spread, context);
  const candidates = likeliest(mask, bass, weak, preferenceOf(context.key));
  const names = candidates.map((candidate) => nameOf(candidate, classes, context));
  if (candidates.some((candidate) => candidate.bass !== 'no root'))
    return naming('chord', names, classes, context);
  return naming('unnamed', names, classes, context);
}

function preferenceOf(key: Key | undefined): RootPreference {
  if (!key) return () => 0;
  const tonic = pitchClassOf(key.tonic);
  return (root) => (root === tonic ? 2 : isInKey(key, root) ? 1 : 0);
}

/** The pitch classes of a set, upwards from one of them. */
function pitchClassesFrom(mask: number, bass: number): number[] {
  const classes: number[] = [];
  for (let i = 0; i < 12; i++) {
    const pitchClass = (bass + i) % 12;
    if (mask & (1 << pitchClass)) classes.push(pitchClass);
  }
  return classes;
}

function nameNote(pitchClass: number, spread: number, context: ChordContext): ChordNaming {
  const [note] = naming('note', [], [pitchClass], context).notes;
  if (!note) return SILENCE;
  const text = formatPitchName(note);
  const words = spread === 0 ? '' : spread === 1 ? 'unison' : 'octaves';
  return naming('note', [chordName(text, note, note, [text], [], words, 0)], [pitchClass], context);
}

/** Two pitch classes: a power chord for a fifth or fourth, else an interval; a third is never a whole chord. */
function nameTwo(
  bass: number,
  other: number,
  weak: boolean,
  spread: number,
  context: ChordContext,
): ChordNaming {
  const up = (other - bass + 12) % 12;
  const classes = [bass, other];
  const inverted = up === 5 || up === 8 || up === 9;
  const [root, tone] = TWO_TONES[up] ?? [];
  if (root === undefined || tone === undefined) {
    const notes = naming('interval', [], classes, context).notes;
    const [low, high] = notes;
    if (!low || !high) return SILENCE;
    const tones = [formatPitchName(low), formatPitchName(high)];
    return naming(
      'interval',
      [chordName(intervalWords(spread), low, low, tones, [], '', 0)],
      classes,
      context,
    );
  }
  const above = degree(tone);
  const at = inverted ? other : bass;
  const fifths = rootFifths(at, [above], context.key, context.tuningNames ?? NO_NAMES);
  const rootName = simplify(nameAtFifths(fifths));
  const toneOf = toneName(fifths, above);
  const [low, high] = inverted ? [toneOf, rootName] : [rootName, toneOf];
  const tones = [formatPitchName(low), formatPitchName(high)];
  const over = inverted && !weak ? `/${formatPitchName(low)}` : '';
  const chord = formatPitchName(rootName) + root + over;
  if (root === '5') {
    const words = inverted ? 'power chord over its fifth, no third' : 'power chord, no third';
    return naming('power', [chordName(chord, rootName, low, tones, [], words, 0)], classes, context);
  }
  const interval = chordName(intervalWords(spread), low, low, tones, [], '', 0);
  const alternative = chordName(chord, rootName, low, [...tones], ['5'], 'without the fifth', 4);
  return naming('interval', [interval, alternative], classes, context);
}

/** Half steps from the bass up → symbol and the tone above its root; thirds and sixths may stand for a chord. */
const TWO_TONES: Readonly<Record<number, readonly [string, string]>> = {
  3: ['m(no5)', 'b3'],
  4: ['(no5)', '3'],
  5: ['5', '5'],
  7: ['5', '5'],
  8: ['(no5)', '3'],
  9: ['m(no5)', 'b3'],
};

function nameOf(candidate: Candidate, classes: readonly number[], context: ChordContext): ChordName {
  const { root, reading, bass: place, cost } = candidate;
  const { key, tuningNames = NO_NAMES } = context;
  const fifths = rootFifths(root, reading.sounding, key, tuningNames);
  const rootName = simplify(nameAtFifths(fifths));
  // Written simply, a doubly sharp root takes its tones along.
  const home = fifthsOf(rootName);
  const [bassClass = root] = classes;
  let bassName = rootName;
  const tones: string[] = [];
  for (const pitchClass of classes) {
    const tone = reading.toneAt[(pitchClass - root + 12) % 12];
    const name =
      pitchClass === root
        ? rootName
        : tone
          ? toneName(home, tone)
          : foreignName(pitchClass, home, key, tuningNames);
    if (pitchClass === bassClass) bassName = name;
    tones.push(formatPitchName(name));
  }
  let name = formatPitchName(rootName) + reading.type.symbol;
  if (place === 'inversion' || place === 'foreign') name += `/${formatPitchName(bassName)}`;
  if (place === 'no root') name += ' (no root)';
  const about = bassWords(candidate, bassName, bassClass);
  const words = reading.words && about ? `${reading.words}, ${about}` : reading.words + about;
  const omitted = reading.omitted.map(({ text }) => text);
  return chordName(name, rootName, bassName, tones, omitted, words, cost);
}

function bassWords({ root, reading, bass: place }: Candidate, bassName: PitchName, bass: number): string {
  if (place === 'root') return '';
  if (place === 'no root') return 'root not sounding';
  const tone = reading.toneAt[(bass - root + 12) % 12];
  return `${place === 'foreign' || !tone ? formatPitchName(bassName) : ordinal(tone.number)} in the bass`;
}
