import guitarShapes from '@tombatossals/chords-db/lib/guitar.json';
import { handOptions, playPassage, type HandAnswer } from '../../src/playing/hand/handSearch';
import type { PassageNote } from '../../src/playing/passage';
import type { Target } from '../../src/playing/target';
import { guitar, note, OPENS, targetOf } from '../domain/playing/boards';
import { ratios, RUNS, timed, type Row } from './rows';

/** A melody that wanders by step through two octaves of D major, in sixteenths. The seed is fixed. */
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

/** Six-note chords of chords-db that a hand can play on the target, every second of the set, at most 200. */
function sixNoteChords(target: Target): PassageNote[] {
  const chords = Object.values(guitarShapes.chords)
    .flat()
    .flatMap(({ positions }) => positions.map(({ midi }) => midi))
    .filter((midi) => midi.length === 6);
  const playable = chords.filter((midi, i) => {
    if (i % 2 > 0) return false;
    const [answer] = playPassage(
      midi.map((one, id) => note(id, one, 0)),
      target,
      handOptions(),
    );
    return answer?.unplaced.length === 0;
  });
  return playable
    .slice(0, 200)
    .flatMap((midi, at) => midi.map((one, i) => note(at * 6 + i, one, at, { end: at + 1 })));
}

/** Fingering with the hand model: the first call in this process, then warm. */
export function run(report: (row: Row) => void): void {
  const dadgad = targetOf(guitar(OPENS.dadgad));
  const melody = randomWalk(1000);
  let last: HandAnswer | undefined;
  const play = (
    notes: readonly PassageNote[],
    target: Target,
    objective: 'total' | 'hardest' = 'total',
  ): void => {
    [last] = playPassage(notes, target, handOptions({ objective, barOf: (id) => Math.floor(id / 16) }));
  };
  const measured = (call: () => void): number[] => {
    for (let i = 0; i < RUNS; i++) call();
    return Array.from({ length: RUNS }, () => timed(call));
  };
  const noted = (): string => `${last?.states ?? 0} states, ${last?.edges ?? 0} moves compared`;

  const first = timed(() => play(melody, dadgad));
  report({
    what: 'finger 1,000 notes, DADGAD, first call',
    runs: [first],
    unit: 'ms',
    goal: { atMost: 150 },
  });

  const one = measured(() => play(melody, dadgad));
  const edges = last?.edges ?? NaN;
  report({ what: 'finger 1,000 notes, DADGAD', runs: one, unit: 'ms', goal: { atMost: 50 }, note: noted() });

  const two = measured(() => play(melody, dadgad, 'hardest'));
  report({ what: 'easiest hardest step, 1,000 notes', runs: two, unit: 'ms', note: noted() });
  report({ what: 'two passes / one', runs: ratios(two, one), unit: '×', goal: { atMost: 2.2 } });

  const long = randomWalk(10_000);
  const ten = Array.from({ length: RUNS }, () => timed(() => play(long, dadgad)));
  report({ what: 'finger 10,000 notes, DADGAD', runs: ten, unit: 'ms', note: noted() });
  const growth = (last?.edges ?? NaN) / edges;
  report({ what: 'moves compared, 10,000 / 1,000 notes', runs: [growth], unit: '×', goal: { atMost: 10.5 } });

  for (const [name, target] of [
    ['DADGAD', dadgad],
    ['open G', targetOf(guitar(OPENS.openG))],
  ] as const) {
    const chords = sixNoteChords(target);
    const runs = measured(() => play(chords, target));
    const what = `finger ${chords.length / 6} six-note chords, ${name}`;
    report({ what, runs, unit: 'ms', goal: { atMost: 100 }, note: noted() });
  }
}
