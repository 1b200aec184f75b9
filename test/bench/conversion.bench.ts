import { placePassage, type PassageNote } from '../../src/playing/passage';
import type { Target } from '../../src/playing/target';
import { guitar, note, OPENS, targetOf } from '../domain/playing/boards';

const GOAL_WARM_MS = 50;

/**
 * A melody that wanders by step through two octaves of D major, in sixteenths, as a player in standard tuning would
 * sound it. The seed is fixed: every run converts the same notes.
 */
function randomWalk(length: number): PassageNote[] {
  const scale = [0, 2, 4, 5, 7, 9, 11].flatMap((step) => [50 + step, 62 + step]).sort((a, b) => a - b);
  let state = 20261125;
  let at = 6;
  return Array.from({ length }, (_, id) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    at = Math.max(0, Math.min(scale.length - 1, at + (Math.floor((state / 2 ** 32) * 5) - 2)));
    return note(id, scale[at], id / 4, { end: (id + 1) / 4 });
  });
}

/** The same melody over a bass note on every beat and a hammer-on in every bar: chords, joins, no two bars alike. */
function withBass(melody: readonly PassageNote[]): PassageNote[] {
  const bass = melody
    .filter((one) => one.onset % 1 === 0)
    .map((one, at) => note(melody.length + at, 38 + ((at * 5) % 12), one.onset, { end: one.onset + 1 }));
  const joined = melody.map((one, id) => {
    const before = melody[id - 1];
    const rises = before?.midi !== undefined && one.midi !== undefined && one.midi > before.midi;
    return id % 16 === 2 && rises ? { ...one, joinedTo: id - 1 } : one;
  });
  return [...joined, ...bass];
}

interface Measured {
  readonly cold: number;
  readonly warm: readonly number[];
  readonly states: number;
  readonly edges: number;
  readonly unplaced: number;
}

function measure(notes: readonly PassageNote[], target: Target): Measured {
  const times: number[] = [];
  let answer = placePassage([], target);
  for (let run = 0; run < 11; run++) {
    const start = performance.now();
    answer = placePassage(notes, target);
    times.push(performance.now() - start);
  }
  const warm = times.slice(-5).sort((a, b) => a - b);
  return {
    cold: times[0] ?? NaN,
    warm,
    states: answer.states,
    edges: answer.edges,
    unplaced: answer.unplaced.length,
  };
}

/** Prints how long a conversion takes: 1,000 notes into DADGAD and open G, warm median of 5 and the first call. */
export async function run(): Promise<void> {
  const melody = randomWalk(1000);
  const passages: readonly (readonly [string, readonly PassageNote[]])[] = [
    ['1,000 notes', melody],
    ['1,000 notes over 250 bass notes, with hammer-ons', withBass(melody)],
    ['10,000 notes', randomWalk(10_000)],
  ];
  const tunings = [
    ['DADGAD', OPENS.dadgad],
    ['open G', OPENS.openG],
  ] as const;
  for (const [what, notes] of passages) {
    for (const [name, opens] of tunings) {
      const { cold, warm, states, edges, unplaced } = measure(notes, targetOf(guitar(opens)));
      const median = warm[2] ?? NaN;
      const spread = `${(warm[0] ?? NaN).toFixed(1)}–${(warm[4] ?? NaN).toFixed(1)}`;
      const goal =
        what === '1,000 notes' ? ` (goal ${GOAL_WARM_MS}: ${median <= GOAL_WARM_MS ? 'met' : 'missed'})` : '';
      console.log(
        `convert ${what} to ${name}: warm ${median.toFixed(1)} ms [${spread}]${goal}, first call ${cold.toFixed(1)} ms, ` +
          `${states} states, ${edges} edges, ${unplaced} unplaced`,
      );
    }
  }
  await Promise.resolve();
}
