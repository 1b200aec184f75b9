import assert from 'node:assert/strict';
import loadHighs from 'highs';
import { PLAIN_COSTS } from '../../../src/playing/costs';
import { placePassage } from '../../../src/playing/passage';
import { note, OPENS, targetOf } from './boards';

/**
 * Source of the expected values: HiGHS 1.15 (npm `highs`, MIT), a mixed-integer solver from outside. The documented cost
 * is written as a linear programme of its own: y = note on string, z = hand at fret, d = travel, e = stretch.
 */
interface SolverNote {
  readonly midi: number;
  readonly moment: number;
  readonly joinedTo: number | undefined;
}

interface SolverBoard {
  readonly opens: readonly number[];
  readonly frets: number;
  readonly length: number;
  readonly reach: number;
}

function programme(notes: readonly SolverNote[], board: SolverBoard): string {
  const { travel, height, stretch, relaxed } = PLAIN_COSTS;
  const x = (fret: number): number => board.length * (1 - 2 ** (-fret / 12));
  const far = x(board.frets);
  const moments = Math.max(...notes.map((one) => one.moment)) + 1;
  const goal: string[] = [];
  const rules: string[] = [];
  const binary: string[] = [];
  const number = (value: number): string => value.toFixed(9);
  const hand = (m: number, sign: '+' | '-'): string =>
    range(1, board.frets)
      .map((h) => `${sign} ${number(x(h))} z${m}_${h}`)
      .join(' ');
  for (let m = 0; m < moments; m++) {
    binary.push(...range(1, board.frets).map((h) => `z${m}_${h}`));
    rules.push(
      `${range(1, board.frets)
        .map((h) => `z${m}_${h}`)
        .join(' + ')} = 1`,
    );
    goal.push(`${stretch} e${m}`);
    if (m === 0) continue;
    goal.push(`${travel} d${m}`);
    rules.push(`d${m} ${hand(m, '-')} ${hand(m - 1, '+')} >= 0`);
    rules.push(`d${m} ${hand(m, '+')} ${hand(m - 1, '-')} >= 0`);
  }
  const users = new Map<string, string[]>();
  notes.forEach((one, i) => {
    const mine: string[] = [];
    board.opens.forEach((open, s) => {
      const fret = one.midi - open;
      const y = `y${i}_${s}`;
      binary.push(y);
      mine.push(y);
      users.set(`${one.moment} ${s}`, [...(users.get(`${one.moment} ${s}`) ?? []), y]);
      if (fret < 0 || fret > board.frets) {
        rules.push(`${y} = 0`);
        return;
      }
      if (fret > 0) {
        goal.push(`${number(height * x(fret))} ${y}`);
        // The hand is not above the note; the note is within reach of the hand; what is past the relaxed span costs.
        rules.push(`${hand(one.moment, '+')} + ${number(far)} ${y} <= ${number(x(fret) + far)}`);
        rules.push(`${number(far)} ${y} ${hand(one.moment, '-')} <= ${number(board.reach - x(fret) + far)}`);
        const most = relaxed - x(fret) + far;
        rules.push(`${number(far)} ${y} ${hand(one.moment, '-')} - e${one.moment} <= ${number(most)}`);
      }
      if (one.joinedTo !== undefined) rules.push(`${y} - y${one.joinedTo}_${s} = 0`);
    });
    rules.push(`${mine.join(' + ')} = 1`);
  });
  for (const list of users.values()) if (list.length > 1) rules.push(`${list.join(' + ')} <= 1`);
  return [
    'Minimize',
    ` cost: ${goal.join(' + ')}`,
    'Subject To',
    ...rules.map((rule, i) => ` r${i}: ${rule}`),
    'Binary',
    ` ${binary.join(' ')}`,
    'End',
  ].join('\n');
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, at) => from + at);
}

/** A small generator with a fixed seed (linear congruential, the usual 32-bit constants). */
function generator(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

describe('least cost against a mixed-integer solver', () => {
  it('equals HiGHS on 80 passages of up to 6 moments, in five tunings, and agrees on what cannot be played', async () => {
    const highs = await loadHighs();
    const random = generator(20261125);
    const boards: readonly SolverBoard[] = [
      { opens: OPENS.standard, frets: 14, length: 648, reach: 130 },
      { opens: OPENS.dadgad, frets: 14, length: 648, reach: 130 },
      { opens: OPENS.openG, frets: 14, length: 648, reach: 130 },
      { opens: OPENS.ukulele, frets: 12, length: 345, reach: 130 },
      { opens: OPENS.bass, frets: 12, length: 864, reach: 150 },
    ];
    let solved = 0;
    let impossible = 0;
    for (let run = 0; run < 80; run++) {
      const board = boards[run % boards.length];
      assert.ok(board);
      const notes: SolverNote[] = [];
      for (let moment = 0; moment < 3 + random(4); moment++) {
        let midi = Math.min(...board.opens) + 3 + random(12);
        for (let i = 0; i <= random(3); i++) {
          const before = notes.findIndex(
            (one) => one.moment === moment - 1 && Math.abs(one.midi - midi) <= 3,
          );
          const free = before >= 0 && !notes.some((one) => one.joinedTo === before) && random(3) === 0;
          notes.push({ midi, moment, joinedTo: free ? before : undefined });
          midi += 3 + random(8);
        }
      }
      const answer = placePassage(
        notes.map((one, id) => note(id, one.midi, one.moment, { joinedTo: one.joinedTo })),
        targetOf(
          { opens: board.opens, frets: board.frets, scaleLength: board.length },
          { reach: board.reach },
        ),
      );
      const solution = highs.solve(programme(notes, board), { output_flag: false, mip_rel_gap: 0 });
      if (answer.unplaced.length > 0) {
        assert.equal(solution.Status, 'Infeasible', `run ${run}`);
        impossible++;
        continue;
      }
      assert.equal(solution.Status, 'Optimal', `run ${run}`);
      // Each term of ours is rounded to 0.001 mm; the solver's own tolerance is 1e-6 of each rule.
      const difference = Math.abs(solution.ObjectiveValue - answer.cost);
      assert.ok(difference < 0.05, `run ${run}: HiGHS ${solution.ObjectiveValue}, search ${answer.cost}`);
      solved++;
    }
    assert.ok(solved >= 50 && impossible >= 5, `${solved} solved, ${impossible} impossible`);
  });
});
