import { formatNoteName } from '../../music/noteName';
import { halfStepsBetween, STRONGEST_STEEL } from './steelWire';
import type { SetLoad, StringLoad } from './stringLoads';
import type { StrainState } from './strainState';

/** `String 1`, or `String 3, the second of its course,`. */
function stringWords({ number, course }: StringLoad): string {
  return course === 1 ? `String ${number}` : `String ${number}, the second of its course,`;
}

/** `gauge 10`; empty where none is known. */
function gaugeWords({ gauge }: StringLoad): string {
  return gauge ? `gauge ${ownGauge(gauge.text)}` : '';
}

/** Of a course written `23w/8` the first string's own gauge is `23w`. */
export function ownGauge(text: string): string {
  return text.split('/')[0] ?? text;
}

/**
 * A change of tension in words: `as usual`, `26 % more`, `37 % less`.
 * @param ratio new by usual
 * @example percentChange(1.26) // '26 % more'
 */
export function percentChange(ratio: number): string {
  const percent = Math.round((ratio - 1) * 100);
  if (percent === 0) return 'as usual';
  return percent > 0 ? `${percent} % more` : `${-percent} % less`;
}

/** What a sentence on a string needs beside its load. */
export interface StrainContext {
  /** Millimetres. */
  readonly scaleLength: number;
  readonly gaugesAre: SetLoad['gaugesAre'];
  /** A gauge that pulls about as usual. */
  readonly suggested?: string | undefined;
}

/**
 * One sentence, or two, on a string that is near its strength, slack, or not to be judged; empty for the others.
 * @example strainSentence(load, 'slack', { scaleLength: 648, gaugesAre: 'usual', suggested: '60w' }) // 'String 6, gauge 46w, has 56 % of its usual tension at B1: …'
 */
export function strainSentence(
  load: StringLoad,
  state: StrainState,
  { scaleLength, gaugesAre, suggested }: StrainContext,
): string {
  const string = stringWords(load);
  const gauge = gaugeWords(load);
  const named = gauge === '' ? string : `${string.replace(/,$/, '')}, ${gauge},`;
  const note = formatNoteName(load.pitch.name);
  const length = lengthWords(scaleLength);
  const mends =
    gaugesAre === 'written'
      ? 'Tune it lower, or take a shorter neck.'
      : 'Tune it lower, take a shorter neck, or say in a gauges field what is on it.';
  switch (state) {
    case 'error':
      return load.share === undefined
        ? `${string} cannot be strung in steel at this length: ${note} at ${length} asks ${shareWords(load.stress / STRONGEST_STEEL)} of the least strength of the strongest size of music wire (ASTM A228). ${mends}`
        : `${string} cannot be strung in plain steel at this length: ${note} at ${length} asks ${shareWords(load.share)} of the least strength of ${gauge} (ASTM A228). ${mends}`;
    case 'warning':
    case 'information': {
      const left = Math.max(0, halfStepsBetween(load.share ?? 1, 1)).toFixed(1);
      const thinner =
        state === 'warning'
          ? ' A thinner string hardly helps: the stress goes with pitch and length alone.'
          : '';
      return `${named} bears ${shareWords(load.share ?? 0)} of the least strength of its steel (ASTM A228) at ${note} and ${length}, ${left} half steps below breaking.${thinner}`;
    }
    case 'first to break':
      return `${named} is the first to break of this set, though it is strung as usual: it bears ${shareWords(load.share ?? 0)} of the least strength of its steel (ASTM A228) at ${note} and ${length}.`;
    case 'slack': {
      const usual = suggested === undefined ? '' : ` ${suggested} pulls about as usual.`;
      return `${named} has ${shareWords(load.ratio ?? 0)} of its usual tension at ${note}: it may buzz, and go sharp where it is struck or pressed hard.${usual}`;
    }
    case 'outside':
      return `${named} lies outside the sizes of ${load.construction ?? 'its kind'} strings whose weights are published, so its tension is not known.`;
    case 'as usual':
    case 'changed':
    case 'unknown':
      return '';
  }
}

/** `648 mm`. */
export function lengthWords(millimetres: number): string {
  return `${Math.round(millimetres * 10) / 10} mm`;
}

/** `76 %`; never 100 % for less. */
export function shareWords(share: number): string {
  const percent = share < 1 ? Math.min(99, Math.round(share * 100)) : Math.round(share * 100);
  return `${percent} %`;
}

/** What the strings are taken to be made of, since `gauges:` cannot say it. */
export function materialWords({ strings, materials: { plain, wound } }: SetLoad): string {
  const has = (kind: boolean): boolean => strings.some(({ gauge }) => gauge?.wound === kind);
  const kinds = [...(has(false) ? [plain] : []), ...(has(true) ? [wound] : [])].join(' and ');
  const heavier =
    has(true) && wound === 'nickel-plated wound'
      ? ' Phosphor bronze wound strings pull 8 to 14 % more than these.'
      : '';
  const loose =
    has(false) && plain === 'plain nylon'
      ? ' Nylon is sized so loosely that its tension may be 6 % off.'
      : '';
  return `${capital(kinds)} strings are assumed.${heavier}${loose}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
