import type { Key } from '../key';
import { nameAtFifths } from '../lineOfFifths';
import { formatPitchName, type PitchName } from '../noteName';
import { spellingTable } from '../spelling';

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

export const NO_NAMES: readonly PitchName[] = Object.freeze([]);

/** Nothing sounds. */
export const SILENCE: ChordNaming = Object.freeze({
  kind: 'silence',
  names: Object.freeze([]),
  notes: Object.freeze([]),
});

/** A naming, frozen; its notes are spelled as the first name spells them. */
export function naming(
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

/** Every name that spelling can give, by its text. */
const PITCH_NAMES = new Map<string, PitchName>(
  Array.from({ length: 41 }, (_, i) => {
    const name = nameAtFifths(i - 18);
    return [formatPitchName(name), name] as const;
  }),
);

/** A name, frozen. */
export function chordName(
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
