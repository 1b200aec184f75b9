import type { Problem } from '../notation/reading';
import { findingAt, problemsOf, type Check, type Scene, type SystemMend } from './check';
import { rewrite, stringLineAt, takeOut } from './support/edits';

const MESSAGES: Readonly<Record<string, string>> = {
  'bracket-not-closed': 'This bracket is not closed. A ghost note stands between two brackets, such as (5).',
  'bracket-not-opened': 'This bracket closes none. A ghost note stands between two brackets, such as (5).',
  'bracket-empty': 'There is no note between these brackets. A ghost note stands between them, such as (5).',
};

export const unmatchedBracket: Check = {
  code: 'unmatched-bracket',
  severity: 'error',
  title: 'Bracket without its other half',
  help: {
    group: 'Signs',
    meaning:
      'Round brackets make ghost notes: `(5)`, `(5h7)`. Here one is missing, or no note stands between them.',
    mending: 'Write both brackets about the note, or take out the one that is there.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, ...Object.keys(MESSAGES)).map((problem) =>
        findingAt(problem, MESSAGES[problem.kind] ?? '', mendsFor(scene, problem)),
      ),
  },
  examples: {
    raises: ['G|--(5----|\n', 'G|--5)----|\n', 'G|--()----|\n', 'G|--(5--(7)--|\n'],
    quiet: ['G|--(5)---|\n', 'G|--(5h7)-|\n', 'G|--(5-7)-|\n'],
  },
};

function mendsFor(scene: Scene, problem: Problem): readonly SystemMend[] {
  const { line, start, end } = problem;
  const tokens = stringLineAt(scene, line)?.tokens ?? [];
  const at = tokens.findIndex((token) => token.start === start);
  if (problem.kind === 'bracket-empty') {
    const open = tokens.slice(0, at).findLast((token) => token.kind === 'open');
    if (!open) return [];
    const edits = [...takeOut(scene, line, open.start, open.end), ...takeOut(scene, line, start, end)];
    return [{ title: 'Take the brackets out', preferred: true, edits }];
  }
  const mends: SystemMend[] = [];
  const near = tokens[problem.kind === 'bracket-not-closed' ? at + 1 : at - 1];
  if (near?.kind === 'number' || near?.kind === 'mute') {
    const note = scene.system.lines[line]?.text.slice(near.start, near.end) ?? '';
    const both =
      problem.kind === 'bracket-not-closed'
        ? rewrite(scene, line, start, near.end, `(${note})`)
        : openBefore(scene, line, near.start);
    if (both) mends.push({ title: `Write (${note})`, edits: both });
  }
  mends.push({ title: 'Take the bracket out', edits: takeOut(scene, line, start, end) });
  return mends;
}

/** An opening bracket in place of the dash before a note. */
function openBefore(scene: Scene, line: number, start: number): SystemMend['edits'] | undefined {
  const dash = stringLineAt(scene, line)?.tokens.find(
    (token) => token.end === start && token.kind === 'dash',
  );
  return dash && [{ line, start: start - 1, end: start, text: '(' }];
}
