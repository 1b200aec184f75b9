import type { Problem } from '../notation/reading';
import { findingAt, problemsOf, textFact, type Check, type Scene, type SystemMend } from './check';
import { stringLineAt } from './support/edits';

export const slideToNowhere: Check = {
  code: 'slide-to-nowhere',
  severity: 'hint',
  title: 'Slide that touches one note only',
  help: {
    group: 'Signs',
    meaning:
      'A slide joins two notes when it touches both or neither. One that touches only the note it leaves goes to nowhere, and the next note is struck anew. With a note close behind, a joining slide may have been meant.',
    mending:
      'To join, write the slide up to the next note: `5///7`. To leave the note for nowhere, leave it.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'slide-off').map((problem) =>
        findingAt(
          problem,
          'This slide touches only the note it leaves, so it goes to nowhere and the next note is struck. Write it up to the next note to join the two.',
          joinMend(scene, problem),
        ),
      ),
  },
  examples: {
    raises: ['G|--5/--7-|\n', 'G|--7\\---5|\n', 'G|5//-7---|\n'],
    quiet: ['G|--5/7---|\n', 'G|--5-/-7-|\n', 'G|--5/----|\n', 'G|--5/--|7-|\n'],
  },
};

function joinMend(scene: Scene, problem: Problem): readonly SystemMend[] {
  const tokens = stringLineAt(scene, problem.line)?.tokens ?? [];
  const at = tokens.findIndex((token) => token.start === problem.start);
  const dash = tokens[at + 1];
  const note = tokens[at + 2];
  if (dash?.kind !== 'dash' || (note?.kind !== 'number' && note?.kind !== 'harmonic')) return [];
  const text = textFact(problem, 'sign').repeat(dash.end - problem.start);
  return [
    {
      title: 'Slide to the next note',
      edits: [{ line: problem.line, start: problem.start, end: dash.end, text }],
    },
  ];
}
