import type { HarmonicCheck, Touched } from '../../instrument/harmonicChecks';
import { noteOfString, soundAt } from './noteText';
import type { EarCheck } from '../../instrument/tuningFrets';
import type { Tuning } from '../../instrument/tuning';
import { spellMidi } from '../../music/spelling';
import { formatNoteName } from '../../music/noteName';
import type { SheetCheck, SheetHarmonicCheck } from './sheetAnswer';

/**
 * A check by ear with its words, for a list of all strings.
 * @example tellCheck({ string: 5, by: 6, fret: 7, stops: 'by', apart: 0 }, dadgad).words // 'String 6 at fret 7 gives string 5, A2'
 */
export function tellCheck(check: EarCheck, tuning: Tuning): SheetCheck {
  return { ...check, words: wordsOf(check, tuning) };
}

function wordsOf({ string, by, fret, stops, apart }: EarCheck, tuning: Tuning): string {
  const { octaves, cents } = parted(apart);
  const off = centsWords(cents, `string ${string}`);
  if (fret === 0) {
    const far = octaves === 0 ? 'the same note as' : octaveWords(octaves);
    return `Open string ${string} sounds ${far} open string ${by}${off}`;
  }
  if (stops === 'string')
    return `String ${string} at fret ${fret} gives open string ${by}, ${noteOfString(tuning, by)}${off}`;
  if (octaves === 0)
    return `String ${by} at fret ${fret} gives string ${string}, ${noteOfString(tuning, string)}${off}`;
  const sounds = soundAt(tuning, by, fret);
  return `String ${string} sounds ${octaveWords(octaves)} string ${by} at fret ${fret}, ${sounds}${off}`;
}

/**
 * The same as an instruction for a string that is being turned.
 * @example checkSentence(check, dadgad) // 'It then sounds an octave below open string 4'
 */
export function checkSentence({ by, fret, stops, apart }: EarCheck, tuning: Tuning): string {
  const { octaves } = parted(apart);
  if (stops === 'string')
    return `At fret ${fret} it then gives open string ${by}, ${noteOfString(tuning, by)}`;
  const other = fret === 0 ? `open string ${by}` : `string ${by} at fret ${fret}`;
  const note = fret === 0 ? noteOfString(tuning, by) : soundAt(tuning, by, fret);
  if (octaves === 0) return `It then sounds the same note as ${other}, ${note}`;
  return `It then sounds ${octaveWords(octaves)} ${other}, ${note}`;
}

function parted(apart: number): { readonly octaves: number; readonly cents: number } {
  const octaves = Math.round(apart / 12);
  return { octaves, cents: Math.round((apart - 12 * octaves) * 1000) / 10 };
}

function octaveWords(octaves: number): string {
  const count = Math.abs(octaves);
  const far = count === 1 ? 'an octave' : count === 2 ? 'two octaves' : `${count} octaves`;
  return `${far} ${octaves < 0 ? 'below' : 'above'}`;
}

function centsWords(cents: number, string: string): string {
  if (cents === 0) return '';
  return `; ${string} is meant ${Math.abs(cents)} cents ${cents < 0 ? 'below' : 'above'} it`;
}

/**
 * Two harmonics with what is heard when both strings are tuned as written.
 * @example tellHarmonics(check, standard).words
 * // 'Harmonics at fret 5 of string 6 and fret 7 of string 5, E4: one beat in 2.7 seconds, as string 5 …'
 */
export function tellHarmonics(check: HarmonicCheck, tuning: Tuning): SheetHarmonicCheck {
  const names = tuning.strings.flatMap(({ pitches }) => pitches.map(({ name }) => name));
  const note = formatNoteName(spellMidi(check.midi, { key: undefined, tuningNames: names }));
  const cents = rounded(check.cents, 2);
  const beats = rounded(check.beats, 2);
  return {
    first: touched(check.first),
    second: touched(check.second),
    note,
    cents,
    beats,
    words: `${pairWords(check)}, ${note}: ${beatWords(check)}`,
  };
}

function pairWords({ first, second }: HarmonicCheck): string {
  if (first.partial === 1) return `Open string ${first.string} and the harmonic at ${place(second)}`;
  if (second.partial === 1) return `The harmonic at ${place(first)} and open string ${second.string}`;
  return `The harmonics at ${place(first)} and ${place(second)}`;
}

function place({ string, touched: fret }: Touched): string {
  return `fret ${fret} of string ${string}`;
}

/** Cents that no ear tells apart in the time that a string rings (engineering value). */
const SILENT_CENTS = 0.05;

function beatWords({ second, cents, beats }: HarmonicCheck): string {
  if (Math.abs(cents) < SILENT_CENTS) return 'they agree, with no beat';
  const rate =
    beats < 1 ? `one beat in ${(1 / beats).toFixed(1)} seconds` : `${beats.toFixed(1)} beats a second`;
  const side = cents > 0 ? 'flat' : 'sharp';
  return `${rate} when both are in tune; without a beat string ${second.string} is ${Math.abs(cents).toFixed(1)} cents ${side}`;
}

function touched({ string, touched: fret, partial, frequency }: Touched): SheetHarmonicCheck['first'] {
  return { string, touched: fret, partial, frequency: rounded(frequency, 3) };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
