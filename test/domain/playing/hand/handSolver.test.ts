import assert from 'node:assert/strict';
import fc from 'fast-check';
import loadHighs from 'highs';
import { handOptions, playPassage } from '../../../../src/playing/hand/handSearch';
import { targetOf } from '../boards';
import { Oracle } from './handOracle';
import { cases, passageOf } from './randomPassages';

/**
 * Source of the expected values: HiGHS 1.15 (npm `highs`, MIT), a linear solver from outside. The oracle's own options
 * and moves are edges of a network; one unit of flow from the first moment to the last costs what the passage costs.
 */
function programme(oracle: Oracle): string {
  const whole = oracle.options.map((all) => all.filter((option) => option.leftOut.length === 0));
  const goal: string[] = [];
  const into = new Map<string, string[]>();
  const outOf = new Map<string, string[]>();
  const put = (map: Map<string, string[]>, key: string, name: string): void => {
    map.set(key, [...(map.get(key) ?? []), name]);
  };
  whole[0]?.forEach((option, j) => {
    goal.push(`${option.cost.toFixed(9)} s${j}`);
    put(into, `0 ${j}`, `s${j}`);
  });
  for (let m = 1; m < whole.length; m++) {
    whole[m]?.forEach((to, j) => {
      whole[m - 1]?.forEach((from, i) => {
        const move = oracle.move(m, from, to);
        if (move === undefined) return;
        const name = `e${m}_${i}_${j}`;
        goal.push(`${(move + to.cost).toFixed(9)} ${name}`);
        put(into, `${m} ${j}`, name);
        put(outOf, `${m - 1} ${i}`, name);
      });
    });
  }
  const rules = [`${(whole[0] ?? []).map((_, j) => `s${j}`).join(' + ')} = 1`];
  whole.slice(0, -1).forEach((all, m) =>
    all.forEach((_, j) => {
      const [from, to] = [into.get(`${m} ${j}`) ?? [], outOf.get(`${m} ${j}`) ?? []];
      if (from.length + to.length > 0)
        rules.push(`${[...from, ...to.map((name) => `- ${name}`)].join(' + ')} = 0`);
    }),
  );
  const lines = (terms: readonly string[]): string =>
    terms.reduce((text, term, i) => `${text}${i > 0 ? ' + ' : ''}${i % 8 === 7 ? '\n' : ''}${term}`, '');
  return `Minimize\n obj: ${lines(goal)}\nSubject To\n${rules.map((rule, i) => ` r${i}: ${rule.replace(/\+ -/g, '-').replace(/((?:\S+ ){16})/g, '$1\n')}`).join('\n')}\nEnd\n`;
}

describe('an outside solver agrees', () => {
  it('HiGHS finds the same least cost on 50 passages', async function () {
    this.timeout(60_000);
    const highs = await loadHighs();
    let solved = 0;
    for (const { hand, notes } of fc.sample(cases, { numRuns: 400, seed: 20261127 })) {
      if (solved === 50) break;
      const { openStrings, thumb, secondsPerQuarter } = hand;
      const target = targetOf(
        { opens: hand.opens, frets: hand.frets, scaleLength: hand.length },
        { slide: hand.slide },
      );
      const [answer] = playPassage(
        passageOf(notes),
        target,
        handOptions({ openStrings, thumb, secondsPerQuarter }),
      );
      // A linear programme does not know of joins that span a moment, and plays every note.
      if (!answer || answer.unplaced.length > 0 || notes.some((n) => n.joinedTo !== undefined)) continue;
      const solution = highs.solve(programme(new Oracle(notes, hand)), { output_flag: false });
      assert.equal(solution.Status, 'Optimal');
      assert.ok(
        Math.abs(solution.ObjectiveValue - answer.cost) < 1e-4,
        `${answer.cost}, HiGHS ${solution.ObjectiveValue}`,
      );
      solved++;
    }
    assert.equal(solved, 50);
  });
});
