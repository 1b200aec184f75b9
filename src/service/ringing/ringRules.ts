import { ordinal } from '../../music/chord/degree';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { isInKey, keyScale, type Key } from '../../music/key';
import { letterSteps } from '../../music/lineOfFifths';
import { pitchClassOf, type PitchName } from '../../music/noteName';
import type { RingingVerdict } from './ringingAnswer';

/** What an open string is to a chord or a key, and why. */
export interface Ring {
  readonly verdict: RingingVerdict;
  readonly role: string;
  readonly reason: string;
}

/** A chord, or the chord of a key's tonic, as the rules see it: its tones by their half steps. */
interface Over {
  readonly root: PitchName;
  /** Half steps above the root, with the tone's name. */
  readonly tones: ReadonlyMap<number, string>;
  /** Undefined where the root is the bass. */
  readonly bass: number | undefined;
  readonly key: Key | undefined;
}

/**
 * The rule, the first line that holds:
 *
 * | the open string is                                          | verdict | why                                      |
 * | ----------------------------------------------------------- | ------- | ---------------------------------------- |
 * | a tone of the chord, or the bass that its name has, in key  | free    | it is what the chord says                |
 * | such a tone, outside the key                                | passing | right over this chord, wrong over the next (engineering choice) |
 * | no such tone, outside the key                               | mute    | it contradicts chord and key             |
 * | a half step above the root or the bass                      | mute    | a minor ninth above what carries the chord |
 * | a half step under the root                                  | mute    | it pulls to the root, and makes a major seventh that the name has not (engineering choice) |
 * | a half step above another tone                              | mute    | a minor ninth above that tone            |
 * | a half step under another tone                              | passing | a mild clash: a major seventh under it   |
 * | anything else                                               | passing | it belongs to the key, not to the chord  |
 *
 * That the tones of a scale a half step above a tone of the chord are not to be left sounding is taught as the avoid
 * notes of the chord: the fourth over a major chord, the sixth of the key over its minor chord (an encyclopedia's
 * article “Avoid note”, with the table of D. Haerle, The Jazz Language, 1980). Softer where the half step lies below:
 * a ninth under a minor third rings in everyone's minor chord (common practice, no source). Without a key no string is
 * outside one.
 */
export function ringOver(name: PitchName, over: Over): Ring {
  const pitchClass = pitchClassOf(name);
  const interval = (pitchClass - pitchClassOf(over.root) + 12) % 12;
  const inKey = over.key === undefined || isInKey(over.key, pitchClass);
  const isBass = over.bass === pitchClass;
  const tone = over.tones.get(interval) ?? (isBass ? 'bass' : undefined);
  if (tone !== undefined)
    return inKey
      ? { verdict: 'free', role: tone, reason: tone }
      : {
          verdict: 'passing',
          role: tone,
          reason: `${tone} only while this chord lasts`,
        };
  const fourth = interval === 6 && letterSteps(over.root.letter, name.letter) === 3;
  const role = fourth ? 'sharp fourth' : (ROLES[interval] ?? '');
  const because = (verdict: RingingVerdict, reason: string): Ring => ({ verdict, role, reason });
  if (!inKey) return because('mute', 'outside the key');
  if (interval === 1) return because('mute', 'a half step above the root');
  if (over.bass !== undefined && pitchClass === (over.bass + 1) % 12)
    return because('mute', 'a half step above the bass');
  if (interval === 11 && over.tones.has(0)) return because('mute', 'a half step under the root');
  const below = over.tones.get(interval - 1);
  if (below !== undefined) return because('mute', `a half step above the ${below}`);
  const above = over.tones.get((interval + 1) % 12);
  return because('passing', above === undefined ? role : `${role} a half step under the ${above}`);
}

/** Half steps above the root as players say them, where the chord does not name them (common practice, no source). */
const ROLES: readonly string[] = [
  'root',
  'flat second',
  'second',
  'flat third',
  'third',
  'fourth',
  'flat fifth',
  'fifth',
  'flat sixth',
  'sixth',
  'flat seventh',
  'seventh',
];

/** What a chord's name says; undefined for `N.C.`. */
export function overChord(chord: WrittenChord, key: Key | undefined): Over | undefined {
  if (!chord.root) return undefined;
  const tones = new Map<number, string>(chord.rootNeed === 'may' ? [] : [[0, 'root']]);
  for (const { degree } of chord.tones) {
    // A third and a seventh are named without their sign, as the chord's own name has it.
    const plain = degree.number === 3 || degree.number === 7;
    const sign = plain
      ? ''
      : degree.text.startsWith('b')
        ? 'flat '
        : degree.text.startsWith('#')
          ? 'sharp '
          : '';
    tones.set(degree.halfSteps, sign + ordinal(degree.number));
  }
  return {
    root: chord.root,
    tones,
    bass: chord.bass && pitchClassOf(chord.bass),
    key,
  };
}

/** Over a key as a whole: its tonic chord may ring, the rest of the scale passes, all else is outside. */
export function ringInKey(note: PitchName, key: Key): Ring {
  const pitchClass = pitchClassOf(note);
  const scale = keyScale(key);
  const tonic = pitchClassOf(key.tonic);
  const role = ROLES[(pitchClass - tonic + 12) % 12] ?? '';
  const at = scale.findIndex((name) => pitchClassOf(name) === pitchClass);
  if (at < 0) return { verdict: 'mute', role, reason: 'outside the key' };
  const words = SCALE_WORDS[at] ?? role;
  return { verdict: at === 0 || at === 2 || at === 4 ? 'free' : 'passing', role: words, reason: words };
}

const SCALE_WORDS: readonly string[] = ['root', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** Of two, the one that a player has to heed: for courses whose strings are no octaves. */
export function stricter(a: Ring, b: Ring): Ring {
  const order: readonly RingingVerdict[] = ['free', 'passing', 'mute'];
  return order.indexOf(b.verdict) > order.indexOf(a.verdict) ? b : a;
}
