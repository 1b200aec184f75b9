import { asciiSigns } from '../notation/lineParts';
import { findingAt, problemsOf, type Check, type LineEdit, type Scene } from './check';
import { stringLines } from './support/labelled';
import { inWords } from './support/words';

export const lookAlikes: Check = {
  code: 'look-alikes',
  severity: 'warning',
  title: 'Characters that look like dashes or bar lines',
  help: {
    group: 'Lines',
    meaning:
      'Programs like to turn two hyphens into a dash, and pages draw lines with other characters than `-` and `|`. They are read as the plain ones here, but other readers and searches will not find them.',
    mending: 'Write the plain signs; one mend does it for the whole system.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'look-alikes').map((problem) => {
        const { characters } = problem.facts;
        const list = Array.isArray(characters) ? characters.map(String) : [];
        return findingAt(
          problem,
          `${inWords(list)} ${list.length === 1 ? 'looks' : 'look'} like - or | and ${list.length === 1 ? 'is' : 'are'} read so. Write the plain signs.`,
          [
            {
              title: 'Write plain - and | in this system',
              preferred: true,
              harmless: true,
              edits: plainSigns(scene),
            },
          ],
        );
      }),
  },
  examples: {
    raises: ['G│--0--2--│\n', 'G|––0––2––|\n', 'A|--0--|\nE|──2──|\n'],
    quiet: ['G|--0--2--|\n', 'G|--0--| slowly – and quietly\n', 'The tide – at last – turns.\n'],
  },
};

function plainSigns(scene: Scene): readonly LineEdit[] {
  return stringLines(scene).flatMap(({ line, item }) =>
    item.lookAlikes.map(({ start, end }) => ({
      line,
      start,
      end,
      text: asciiSigns(item.text.slice(start, end)),
    })),
  );
}
