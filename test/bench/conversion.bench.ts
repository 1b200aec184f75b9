import { placePassage, type PassageNote } from '../../src/playing/passage';
import type { Target } from '../../src/playing/target';
import { guitar, note, OPENS, targetOf } from '../domain/playing/boards';
import { RUNS, timed, type Row } from './rows';

/** Milliseconds for 1,000 notes, warm. */
const GOAL = 50;
const WARM_UP = 6;

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

/** Converts a passage to other tunings: 1,000 notes are held to the goal, the others are printed. */
export function run(report: (row: Row) => void): void {
  const melody = randomWalk(1000);
  const passages: readonly (readonly [string, readonly PassageNote[]])[] = [
    ['1,000 notes', melody],
    ['1,000 notes, 250 bass notes', withBass(melody)],
    ['10,000 notes', randomWalk(10_000)],
  ];
  const tunings = [
    ['DADGAD', OPENS.dadgad],
    ['open G', OPENS.openG],
  ] as const;
  for (const [what, notes] of passages) {
    for (const [name, opens] of tunings) {
      const row = measure(`${what} to ${name}, warm`, notes, targetOf(guitar(opens)));
      report(what === '1,000 notes' ? { ...row, goal: { atMost: GOAL } } : row);
    }
  }
}

function measure(what: string, notes: readonly PassageNote[], target: Target): Row {
  let answer = placePassage([], target);
  const convert = (): void => {
    answer = placePassage(notes, target);
  };
  const cold = timed(convert);
  for (let i = 1; i < WARM_UP; i++) convert();
  const runs = Array.from({ length: RUNS }, () => timed(convert));
  const { states, edges, unplaced } = answer;
  const count = (n: number): string => n.toLocaleString('en');
  const note = `first call ${cold.toFixed(1)} ms; ${count(states)} states, ${count(edges)} edges, ${unplaced.length} unplaced`;
  return { what, runs, unit: 'ms', note };
}
