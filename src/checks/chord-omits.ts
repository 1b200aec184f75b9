import { chordCheck } from './support/chordCheck';

export const chordOmits = chordCheck({
  code: 'chord-omits',
  severity: 'hint',
  title: 'The chord says more than sounds',
  verdict: 'omits',
  meaning:
    'Notes are struck together here, nothing contradicts the name, but something that it promises does not sound until the next name: no third makes a power chord of it. A fifth may always be left out.',
  mending: 'Write the name of what sounds, or leave it for whoever accompanies you.',
  examples: {
    raises: [
      'chords |D       |\nA      |5-------|\nE      |--------|\n\nchords |D       |\nE      |--------|\nB      |--------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'chords |C7      |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |--------|\n',
      'chords |Am7     |\nE      |0-------|\nB      |1-------|\nG      |2-------|\nD      |2-------|\nA      |0-------|\nE      |--------|\n',
    ],
    quiet: [
      'chords |D5      |\nE      |--------|\nB      |--------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'chords |C       |\nE      |0-------|\nB      |1-------|\nG      |--------|\nD      |--------|\nA      |3-------|\nE      |--------|\n',
      'chords |C       |\nB      |1---0---|\n',
    ],
  },
});
