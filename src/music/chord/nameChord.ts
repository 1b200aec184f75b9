import { intervalWords } from '../interval';
import { formatKey, isInKey, type Key } from '../key';
import { fifthsOf, nameAtFifths, simplify } from '../lineOfFifths';
import { formatPitchName, pitchClassOf, type PitchName } from '../noteName';
import { spellingTable } from '../spelling';
import { likeliest, type Candidate, type RootPreference } from './candidates';
import { foreignName, rootFifths, toneName } from './chordSpelling';
import { degree, ordinal } from './degree';

/** What a name depends on beside the notes. Hand the same record on: names are remembered for each. */
export interface ChordContext {
  readonly key?: Key | undefined;
  /** The open strings' names as the tuning's text spells them. */
  readonly tuningNames?: readonly PitchName[] | undefined;
  /** Whether some open string is lower than the one before it (`isReentrant`): then the lowest note is a weak bass. */
  readonly reentrant?: boolean | undefined;
}

/** One name of what sounds. */
export interface ChordName {
  /** `Am7/G`, `D5`, `major tenth`, `A7 (no root)`. */
  readonly name: string;
  readonly root: PitchName;
  /** The lowest note, whether the name says it or not. */
  readonly bass: PitchName;
  /** The sounding tones, each once, spelled as this name spells them, from the bass up. */
  readonly tones: readonly string[];
  /** Degrees that the name has and that do not sound, such as `5`. */
  readonly omitted: readonly string[];
  /** What a player would add in words: `power chord, no third`; `without the fifth`. May be empty. */
  readonly words: string;
  /** The lower, the likelier; to be compared only within one answer. */
  readonly cost: number;
}

/** What sounds, and its names. */
export interface ChordNaming {
  readonly kind: 'silence' | 'note' | 'interval' | 'power' | 'chord' | 'unnamed';
  /** Best first, at most four; none for silence and for what has no everyday name. */
  readonly names: readonly ChordName[];
  /** The sounding notes, each once, from the bass up, as the first name spells them. */
  readonly notes: readonly PitchName[];
}

/** Beyond this from a half step, in half steps, a pitch has no name in a chord (the seventh partial is 0.31 off). */
const OFF_PITCH = 0.25;
/** Contexts whose names are remembered, and names in each: more than a document has. */
const CONTEXTS = 64;
const NAMES = 20_000;

const EMPTY: ChordContext = Object.freeze({});
const SILENCE: ChordNaming = Object.freeze({
  kind: 'silence',
  names: Object.freeze([]),
  notes: Object.freeze([]),
});

type Memo = Map<number, ChordNaming>;
const byContents = new Map<string, Memo>();
let byIdentity = new WeakMap<ChordContext, Memo>();
/** A passage is named in one context, so the last one is asked first. */
let lastContext: ChordContext | undefined;
let lastMemo: Memo | undefined;

/** Whether some open string is lower than the one before it, as on a ukulele with a high fourth string. */
export function isReentrant(openMidis: readonly number[]): boolean {
  return openMidis.some((midi, i) => i > 0 && midi < (openMidis[i - 1] ?? midi));
}

/**
 * Names what sounds together, likeliest name first. Octaves and doublings do not count; the lowest pitch is the bass.
 * @param midis sounding MIDI numbers in string order, the string placed lowest first, both notes of a double course;
 * pitches more than 25 cents off a half step stay out
 * @example nameChord([48, 52, 55, 60, 64]).names[0]?.name // 'C'
 */
export function nameChord(midis: readonly number[], context: ChordContext = EMPTY): ChordNaming {
  return nameSounding(midis, context, true);
}

/** The same without the memo: for the benchmark, and for laws that must not be true by memory alone. */
export function nameChordAfresh(midis: readonly number[], context: ChordContext = EMPTY): ChordNaming {
  return nameSounding(midis, context, false);
}

function nameSounding(midis: readonly number[], context: ChordContext, remembered: boolean): ChordNaming {
  let mask = 0;
  let lowest = Infinity;
  let first = -1;
  let highest = -Infinity;
  let count = 0;
  for (const midi of midis) {
    const whole = Math.round(midi);
    if (!(Math.abs(midi - whole) <= OFF_PITCH)) continue;
    const pitchClass = ((whole % 12) + 12) % 12;
    mask |= 1 << pitchClass;
    if (first < 0) first = pitchClass;
    if (whole < lowest) lowest = whole;
    if (whole > highest) highest = whole;
    count++;
  }
  if (count === 0) return SILENCE;
  const bass = ((lowest % 12) + 12) % 12;
  const weak = context.reentrant === true && first !== bass;
  const others = mask & ~(1 << bass);
  // How far apart two notes are decides their name; of more notes only the set and the bass do.
  let spread = 0;
  if (others === 0) spread = count === 1 ? 0 : highest === lowest ? 1 : 2;
  else if ((others & (others - 1)) === 0) spread = lowestOther(midis, lowest);
  const id = mask | (bass << 12) | (weak ? 1 << 16 : 0) | (spread << 17);
  const memo = remembered ? memoOf(context) : undefined;
  let naming = memo?.get(id);
  if (!naming) {
    naming = nameSet(mask, bass, weak, spread, context);
    if (memo && memo.size >= NAMES) memo.clear();
    memo?.set(id, naming);
  }
  return naming;
}

/** The memo of all contexts that say the same. */
function memoOf(context: ChordContext): Memo {
  if (context === lastContext && lastMemo) return lastMemo;
  const memo = byIdentity.get(context) ?? memoByContents(context);
  byIdentity.set(context, memo);
  [lastContext, lastMemo] = [context, memo];
  return memo;
}

function memoByContents(context: ChordContext): Memo {
  const { key, tuningNames = [], reentrant } = context;
  const contents = [
    key ? formatKey(key) : '',
    ...tuningNames.map(formatPitchName),
    reentrant ? 'r' : '',
  ].join(' ');
  let memo = byContents.get(contents);
  if (!memo) {
    if (byContents.size >= CONTEXTS) {
      byContents.clear();
      byIdentity = new WeakMap();
    }
    byContents.set(contents, (memo = new Map()));
  }
  return memo;
}

/** Half steps from the lowest pitch to the lowest one of another pitch class. */
function lowestOther(midis: readonly number[], lowest: number): number {
  let other = Infinity;
  for (const midi of midis) {
    const whole = Math.round(midi);
    if (Math.abs(midi - whole) > OFF_PITCH || (whole - lowest) % 12 === 0) continue;
    if (whole < other) other = whole;
  }
  return other - lowest;
}

function nameSet(
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

function naming(
  kind: ChordNaming['kind'],
  names: ChordName[],
  classes: readonly number[],
  context: ChordContext,
): ChordNaming {
  const [first] = names;
  const notes = first
    ? first.tones.map((tone) => PITCH_NAMES.get(tone)).filter((note) => note !== undefined)
    : plainNames(classes, context);
  return Object.freeze({ kind, names: Object.freeze(names), notes: Object.freeze(notes) });
}

/** The names of notes that no chord spells: as key and tuning have them. */
function plainNames(classes: readonly number[], { key, tuningNames = NO_NAMES }: ChordContext): PitchName[] {
  const table = spellingTable({ key, tuningNames });
  return classes.map((pitchClass) => table[pitchClass] ?? nameAtFifths(0));
}

const NO_NAMES: readonly PitchName[] = Object.freeze([]);

/** Every name that spelling can give, by its text. */
const PITCH_NAMES = new Map<string, PitchName>(
  Array.from({ length: 41 }, (_, i) => {
    const name = nameAtFifths(i - 18);
    return [formatPitchName(name), name] as const;
  }),
);

function nameNote(pitchClass: number, spread: number, context: ChordContext): ChordNaming {
  const [note] = naming('note', [], [pitchClass], context).notes;
  if (!note) return SILENCE;
  const text = formatPitchName(note);
  const words = spread === 0 ? '' : spread === 1 ? 'unison' : 'octaves';
  return naming('note', [chordName(text, note, note, [text], [], words, 0)], [pitchClass], context);
}

function chordName(
  name: string,
  root: PitchName,
  bass: PitchName,
  tones: string[],
  omitted: string[],
  words: string,
  cost: number,
): ChordName {
  return Object.freeze({
    name,
    root,
    bass,
    tones: Object.freeze(tones),
    omitted: Object.freeze(omitted),
    words,
    cost,
  });
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
