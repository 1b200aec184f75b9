import { midiOf } from '../music/noteName';
import { respell } from './spelling';
import type { OpenPitch, TuningString } from './tuning';

/**
 * The strings tuned up or down by half steps, one number a string, low string first; both strings of a course move.
 * A string that stays keeps its spelling, the others are named to fit. Cents stay.
 * @example retune(standard, [-1, -1, -1, -1, -1, -1]) // Eb2 Ab2 Db3 Gb3 Bb3 Eb4
 */
export function retune(strings: readonly TuningString[], steps: readonly number[]): readonly TuningString[] {
  const moved = strings.map((_, index) => steps[index] ?? 0);
  const names = respell(
    strings.map(({ pitches }, index) => {
      const by = moved[index] ?? 0;
      return { midi: midiOf(pitches[0].name) + by, kept: by === 0 ? pitches[0].name : undefined };
    }),
    moved.reduce((sum, by) => sum + by, 0) <= 0,
  );
  return strings.map((string, index) => {
    const by = moved[index] ?? 0;
    const name = names[index];
    if (by === 0 || name === undefined) return string;
    const [first, second] = string.pitches;
    const pitch: OpenPitch = { name, midi: cleanMidi(first.midi + by) };
    if (second === undefined) return { ...string, pitches: [pitch] };
    return { ...string, pitches: [pitch, partnerOf(pitch, second, by)] };
  });
}

/** The other string of a course; an octave or unison is spelled as the first string is. */
function partnerOf(first: OpenPitch, second: OpenPitch, by: number): OpenPitch {
  const whole = midiOf(second.name) + by;
  const apart = whole - midiOf(first.name);
  const name =
    apart % 12 === 0
      ? { ...first.name, octave: first.name.octave + apart / 12 }
      : (respell([{ midi: whole, kept: undefined }], by <= 0)[0] ?? second.name);
  return { name, midi: cleanMidi(second.midi + by) };
}

/** Without the dust of binary fractions: to a hundredth of a cent. */
export function cleanMidi(midi: number): number {
  return Math.round(midi * 10000) / 10000;
}
