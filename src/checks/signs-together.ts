import { findingAt, problemsOf, textFact, type Check } from './check';
import { stringLineAt, takeOut } from './support/edits';

export const signsTogether: Check = {
  code: 'signs-together',
  severity: 'error',
  title: 'Signs that cannot stand together',
  help: {
    group: 'Signs',
    meaning:
      'Two signs ask for things that one note cannot do: a hammer-on and a pull-off to the same note, a slide up and down at once, a bend on a muted stroke.',
    mending: 'Keep the sign that is meant. A slide there and back has its turning note written: `5/7\\5`.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'signs-together').map((problem) => {
        const { line, start, end } = problem;
        const slide = stringLineAt(scene, line)?.tokens.find((t) => t.start === start)?.kind === 'slide';
        const [first, second] = [textFact(problem, 'first'), textFact(problem, 'second')];
        const advice = slide ? 'Write the note where the slide turns.' : 'Keep the one that is meant.';
        return findingAt(problem, `“${first}” and “${second}” cannot stand together on one note. ${advice}`, [
          slide
            ? {
                title: `Slide ${first === '/' ? 'up' : 'down'} only`,
                edits: [{ line, start, end, text: first.repeat(end - start) }],
              }
            : { title: 'Write a dash for this sign', edits: takeOut(scene, line, start, end) },
        ]);
      }),
  },
  examples: {
    raises: ['G|--5hp7--|\n', 'G|--5/\\7--|\n', 'G|--x~----|\n', 'G|--hx----|\n'],
    quiet: ['G|--5h7p5-|\n', 'G|--5/7\\5-|\n', 'G|--7b9~--|\n'],
  },
};
