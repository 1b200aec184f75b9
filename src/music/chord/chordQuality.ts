import { degree, type Degree } from './degree';
import type { WrittenTone } from './writtenChord';

/** What the signs after the root have said so far. */
export interface Quality {
  third: '3' | 'b3' | undefined;
  /** `no3`, or a power chord. */
  thirdForbidden: boolean;
  /** Fifths named; empty means a perfect one that may be left out. */
  fifths: string[];
  fifthForbidden: boolean;
  /** `maj`: the next seventh is a major one. */
  major: boolean;
  seventh: '7' | 'b7' | 'bb7' | undefined;
  /** The highest of 9, 11, 13 said without `add`. */
  extension: number;
  diminished: boolean;
  suspended: Set<string>;
  added: Set<string>;
  /** Extensions that an alteration stands for: the ninth of `13b9`. */
  replaced: Set<number>;
  omitted: Set<number>;
  altered: boolean;
  rootless: boolean;
}

export function plainQuality(): Quality {
  return {
    third: '3',
    thirdForbidden: false,
    fifths: [],
    fifthForbidden: false,
    major: false,
    seventh: undefined,
    extension: 0,
    diminished: false,
    suspended: new Set(),
    added: new Set(),
    replaced: new Set(),
    omitted: new Set(),
    altered: false,
    rootless: false,
  };
}

/** A number after the root or a quality: 2 4 6 7 9 11 13. */
export function applyNumber(quality: Quality, number: number): void {
  if (number === 2) quality.added.add('9');
  else if (number === 4) quality.added.add('11');
  else if (number === 6) quality.added.add('6');
  else if (number === 7 && quality.major && quality.seventh === 'bb7') quality.added.add('7');
  else {
    quality.seventh ??= quality.major ? '7' : quality.diminished ? 'bb7' : 'b7';
    if (number > 7) quality.extension = Math.max(quality.extension, number);
  }
}

/** An altered degree such as `b5`, `#9`, `b13`. A fifth is replaced, anything else comes to the chord. */
export function applyAlteration(quality: Quality, sign: '#' | 'b', number: number): void {
  if (number === 5) quality.fifths.push(`${sign}5`);
  else if (number === 6) quality.added.add(`${sign}6`);
  else if (number === 7) quality.seventh = sign === 'b' ? 'b7' : '7';
  else {
    const high = number < 7 ? number + 7 : number;
    quality.added.add(`${sign}${high}`);
    quality.replaced.add(high);
  }
}

/** `5` right after the root. */
export function applyPower(quality: Quality): void {
  quality.third = undefined;
  quality.thirdForbidden = true;
  quality.fifths.push('5');
}

/** The tones of a quality, each once, with their need. */
export function tonesOf(quality: Quality): readonly WrittenTone[] {
  const tones = new Map<number, WrittenTone>();
  const put = (text: string, need: WrittenTone['need']) => {
    const tone: Degree = degree(text);
    const known = tones.get(tone.halfSteps)?.need;
    if (quality.omitted.has(tone.number) || known === 'must' || known === need) return;
    tones.set(tone.halfSteps, Object.freeze({ degree: tone, need }));
  };
  const { extension, added } = quality;
  // Maj#11 without a number is a maj7 with it.
  const seventh = quality.seventh ?? (quality.major && added.has('#11') && !added.has('6') ? '7' : undefined);
  const dominantEleventh = extension === 11 && quality.third === '3' && seventh === 'b7';
  const suspended = [...quality.suspended];
  for (const text of suspended) put(text, 'must');
  if (suspended.length === 0 && quality.third) put(quality.third, dominantEleventh ? 'may' : 'must');
  if (quality.altered) for (const text of ['b5', '#5', 'b9', '#9', 'b13']) put(text, 'may');
  else if (quality.fifths.length) {
    for (const text of quality.fifths) put(text, text === '5' && !quality.thirdForbidden ? 'may' : 'must');
  } else put('5', 'may');
  if (seventh) put(seventh, 'must');
  for (const text of added) put(text, 'must');
  if (extension >= 9 && !quality.replaced.has(9)) put('9', extension === 9 ? 'must' : 'may');
  if (extension >= 11 && !quality.replaced.has(11)) put('11', extension === 11 ? 'must' : 'may');
  if (extension === 13 && !quality.replaced.has(13)) put('13', 'must');
  return [...tones.values()].sort(
    (a, b) => a.degree.number - b.degree.number || a.degree.halfSteps - b.degree.halfSteps,
  );
}
