import { findingAt, numberFact, problemsOf, textFact, type Check } from './check';

export const slideAgainstSign: Check = {
  code: 'slide-against-sign',
  severity: 'warning',
  title: 'Slide against its sign',
  help: {
    group: 'Signs',
    meaning:
      '`/` slides up and `\\` slides down. The frets on its two sides go the other way, or not at all.',
    mending: 'Turn the sign round, or write the fret that is meant.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'slide-against-sign').map((problem) => {
        const [from, to] = [numberFact(problem, 'from'), numberFact(problem, 'to')];
        const [start, end] = [numberFact(problem, 'signStart'), numberFact(problem, 'signEnd')];
        const sign = textFact(problem, 'sign');
        const turned = from === to ? '-' : sign === '/' ? '\\' : '/';
        const where = from === to ? `stays on fret ${from}` : `goes from fret ${from} to ${to}`;
        return findingAt(
          problem,
          `“${sign}” slides ${sign === '/' ? 'up' : 'down'}, and this slide ${where}. Write ${turned === '-' ? 'a dash' : turned}.`,
          [
            {
              title: turned === '-' ? 'Write a dash for the sign' : `Write ${turned}`,
              preferred: turned !== '-',
              edits: [{ line: problem.line, start, end, text: turned.repeat(end - start) }],
            },
          ],
        );
      }),
  },
  examples: {
    raises: ['G|--7/5---|\n', 'G|--5\\7---|\n', 'G|--5//5--|\n'],
    quiet: ['G|--5/7---|\n', 'G|--7\\5---|\n', 'G|--/5--7\\|\n'],
  },
};
