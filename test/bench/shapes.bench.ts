import { handOptions } from '../../src/playing/hand/options';
import { findShapes } from '../../src/playing/shapes/findShapes';
import { guitar, OPENS, targetOf } from '../domain/playing/boards';
import { everyShape } from '../domain/playing/shapes/exhaustive';
import { wanted } from '../domain/playing/shapes/known';
import { ratios, RUNS, timed, type Row } from './rows';

const EIGHT = [30, 35, 40, 45, 50, 55, 59, 64];
const EVERYDAY = ['C', 'G/B', 'Am7', 'F', 'Dsus4', 'B7'];
const RICH = ['C9', 'Am11', 'C13', 'G7alt'];
const FRETS = 15;

/**
 * The shapes of a chord over 15 frets, first call and warm, on six and on eight strings; against an enumeration of every
 * fret on every string in the same run.
 */
export function run(report: (row: Row) => void): void {
  const hand = handOptions();
  const six = targetOf(guitar(OPENS.standard));
  const eight = targetOf(guitar(EIGHT));
  const [first = 'C'] = EVERYDAY;
  report({
    what: `shapes of ${first} over 15 frets, first call`,
    runs: [timed(() => findShapes(wanted(first), six, { hand }))],
    unit: 'ms',
  });
  for (const [name, target] of [
    ['six strings', six],
    ['DADGAD', targetOf(guitar(OPENS.dadgad))],
    ['eight strings', eight],
  ] as const) {
    for (const [kind, chords] of [
      ['everyday', EVERYDAY],
      ['rich', RICH],
    ] as const) {
      const each = (): void => {
        for (const chord of chords) findShapes(wanted(chord), target, { hand });
      };
      each();
      const runs = Array.from({ length: RUNS }, () => timed(each) / chords.length);
      report({
        what: `shapes of an ${kind} chord, ${name}`.replace('an rich', 'a rich'),
        runs,
        unit: 'ms',
        goal: { atMost: 50 },
      });
    }
  }
  const finder = (): unknown => findShapes(wanted('Am7'), six, { hand });
  const plain = (): unknown => everyShape(wanted('Am7'), six, hand, FRETS, 3);
  const own = Array.from({ length: RUNS }, () => timed(finder));
  const peer = [timed(plain)];
  report({ what: `shapes of Am7 over ${FRETS} frets, six strings`, runs: own, unit: 'ms' });
  report({ what: 'every fret on every string tried', runs: peer, unit: 'ms' });
  report({
    what: 'every fret tried / finder',
    runs: ratios(
      own.map(() => peer[0] ?? NaN),
      own,
    ),
    unit: '×',
    goal: { atLeast: 10 },
  });
}
