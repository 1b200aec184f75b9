import { keyOf } from '../notation/bars';
import type { Problem } from '../notation/reading';
import {
  findingAt,
  numberFact,
  numbersFact,
  problemsOf,
  type Check,
  type LineEdit,
  type Scene,
} from './check';
import { stringLineAt } from './support/edits';

export const barOutOfLine: Check = {
  code: 'bar-out-of-line',
  severity: 'warning',
  title: 'Bar sign out of line',
  help: {
    group: 'Bars',
    meaning:
      'Bar signs of all strings stand in one column. This line has one where most others have none, often because a dash is missing or too many, so its notes may be read in another bar or at another time.',
    mending:
      'Move the sign by adding dashes or taking some away; the mend does so where no note is in the way.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'bar-out-of-line').map((problem) => {
        const off = numberFact(problem, 'expected') - numberFact(problem, 'column');
        const edits = straighten(scene, problem);
        const where = Math.abs(off) === 1 ? 'one column' : `${Math.abs(off)} columns`;
        return findingAt(
          problem,
          off === 0
            ? 'This bar sign does not stand in line with those of the other strings.'
            : `This bar sign stands ${where} ${off > 0 ? 'before' : 'behind'} those of the other strings. ${off > 0 ? 'Add' : 'Take away'} ${Math.abs(off) === 1 ? 'a dash' : 'dashes'} before it.`,
          edits ? [{ title: 'Move the bar sign into line', preferred: true, edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'E|0---|\nB|1---|\nG|0--|\nD|2---|\nA|3---|\nE|----|\n',
      'G|0---|2---|\nD|----|----|\nA|-----|----|\n',
      'G|0---|2---|\nD|----|----|\nA|-|---|----|\n',
    ],
    quiet: [
      'E|0---|\nB|1---|\nG|0---|\nD|2---|\nA|3---|\nE|----|\n',
      'G|:0---:|\nD|------|\nA|------|\n',
      'G|0---|2---\nD|----|----\nA|----|----\n',
    ],
  },
};

/** The line with its bar signs where the others have them; undefined where a note is in the way. */
function straighten(scene: Scene, problem: Problem): readonly LineEdit[] | undefined {
  const { line } = problem;
  const tokens = stringLineAt(scene, line)?.tokens ?? [];
  const signs = tokens.filter((token) => token.kind === 'bar');
  const own = signs.map(keyOf);
  const keys = numbersFact(problem, 'keys');
  if (own.length !== keys.length) {
    const strays = new Set(numbersFact(problem, 'strays'));
    if (own.length - strays.size !== keys.length) return undefined;
    return signs
      .filter((sign) => strays.has(keyOf(sign)))
      .map(({ start, end }) => ({ line, start, end, text: '-'.repeat(end - start) }));
  }
  const edits: LineEdit[] = [];
  for (let i = 1; i < signs.length; i++) {
    const sign = signs[i];
    if (!sign) continue;
    const more = (keys[i] ?? 0) - (keys[i - 1] ?? 0) - ((own[i] ?? 0) - (own[i - 1] ?? 0));
    const before = tokens[tokens.indexOf(sign) - 1];
    if (more > 0) edits.push({ line, start: sign.start, end: sign.start, text: '-'.repeat(more) });
    if (more < 0) {
      if (before?.kind !== 'dash' || before.width < -more) return undefined;
      edits.push({ line, start: sign.start + more, end: sign.start, text: '' });
    }
  }
  return edits;
}
