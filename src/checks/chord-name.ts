import { readChordName } from '../music/chord/readChordName';
import type { Check } from './check';
import { rewriteMark } from './support/edits';

export const chordName: Check = {
  code: 'chord-name',
  severity: 'error',
  title: 'Chord name that cannot be read',
  help: {
    group: 'Chords',
    meaning:
      'A name in a `chords` row begins with its root, a capital A–G, then come signs such as `m`, `7`, `maj7`, `sus4`, `dim`, `add9`, `b5`, and a bass behind a slash. `N.C.` means no chord. This one cannot be read, so it is not compared with what sounds and does not move with the music.',
    mending: 'Write the name in the usual signs. Other words belong in a row of their own.',
  },
  run: {
    system: (scene) =>
      scene.reading.rows
        .filter(({ row }) => row === 'chords')
        .flatMap(({ line, marks }) =>
          marks.flatMap(({ text, start, end }) => {
            const read = readChordName(text);
            if (read.ok) return [];
            const { error } = read;
            return [
              {
                line,
                start: start + error.start,
                end: Math.min(end, start + Math.max(error.end, error.start + 1)),
                message: error.message,
                mends: error.suggestions.flatMap((name) => {
                  const edits = rewriteMark(scene, line, start, end, name);
                  const preferred = error.suggestions.length === 1;
                  return edits ? [{ title: `Write ${name}`, preferred, edits }] : [];
                }),
              },
            ];
          }),
        ),
  },
  examples: {
    raises: [
      'chords |dm      |\nG      |0-------|\n',
      'chords |H7      |\nG      |0-------|\n',
      'chords |Dfoo    |\n',
      'chords |D/H     |\n',
    ],
    quiet: [
      'chords |G       |\nG      |0-------|\n',
      'chords |Am7/G   |F#m7b5  |\n',
      'chords |N.C.    |CM7     |\n',
      'names  |dm      |\nG      |0-------|\n',
    ],
  },
};
