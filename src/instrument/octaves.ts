import { midiOf } from '../music/noteName';
import type { WrittenString } from './noteList';
import type { TuningString } from './tuning';

const LOWEST_OCTAVE = 0;
const HIGHEST_OCTAVE = 8;

/**
 * The octave of each string's first note, low string first, where the text leaves octaves out. Octaves are chosen
 * together: the least total distance from the usual strings of the same numbers, each string lying from its
 * neighbour in the usual direction or level with it; of equals the lower. Strings beyond the usual ones go each to
 * the next such note below its neighbour. Written octaves stay, and where they leave no way to keep the usual
 * direction it is broken as seldom as can be.
 * @param usual the instrument's usual strings, low string first
 */
export function inferOctaves(
  written: readonly WrittenString[],
  usual: readonly TuningString[],
): readonly number[] {
  const further = Math.max(written.length - usual.length, 0);
  const usualMidis = usual
    .slice(Math.max(usual.length - written.length, 0))
    .map(({ pitches }) => midiOf(pitches[0].name));
  const octaves = chooseTogether(written.slice(further), usualMidis);
  for (let index = further - 1; index >= 0; index--) {
    const above = noteMidi(written[index + 1], octaves[0] ?? LOWEST_OCTAVE);
    octaves.unshift(octaveBelow(written[index], above));
  }
  return octaves;
}

/** One octave for a string, with the cheapest way to it from the strings before. */
interface Choice {
  readonly octave: number;
  readonly midi: number;
  readonly cost: number;
  readonly before: Choice | undefined;
}

/* A cost is one whole number whose parts never meet: broken directions, then distance, then height. */
const BROKEN = 1e8;
const DISTANCE = 1e4;

function chooseTogether(written: readonly WrittenString[], usualMidis: readonly number[]): number[] {
  let choices: readonly Choice[] = [];
  written.forEach((string, index) => {
    const usual = usualMidis[index] ?? 0;
    const direction = index === 0 ? 0 : Math.sign(usual - (usualMidis[index - 1] ?? 0));
    choices = possibleOctaves(string).map((octave) => {
      const midi = noteMidi(string, octave);
      const own = Math.abs(midi - usual) * DISTANCE + midi;
      let best: Choice | undefined;
      for (const before of choices) {
        const broken = direction !== 0 && (midi - before.midi) * direction < 0 ? BROKEN : 0;
        const cost = before.cost + broken + own;
        if (best === undefined || cost < best.cost) best = { octave, midi, cost, before };
      }
      return best ?? { octave, midi, cost: own, before: undefined };
    });
  });
  let last = choices.reduce<Choice | undefined>(
    (best, choice) => (best === undefined || choice.cost < best.cost ? choice : best),
    undefined,
  );
  const octaves: number[] = [];
  for (; last !== undefined; last = last.before) octaves.unshift(last.octave);
  return octaves;
}

function possibleOctaves(string: WrittenString): readonly number[] {
  const written = string.pitches[0].octave;
  if (written !== undefined) return [written];
  return Array.from({ length: HIGHEST_OCTAVE - LOWEST_OCTAVE + 1 }, (_, index) => LOWEST_OCTAVE + index);
}

function octaveBelow(string: WrittenString | undefined, above: number): number {
  const written = string?.pitches[0].octave;
  if (written !== undefined) return written;
  const inLowest = noteMidi(string, LOWEST_OCTAVE);
  return Math.max(LOWEST_OCTAVE, LOWEST_OCTAVE + Math.ceil((above - inLowest) / 12) - 1);
}

function noteMidi(string: WrittenString | undefined, octave: number): number {
  return string === undefined ? 0 : midiOf({ ...string.pitches[0].name, octave });
}
