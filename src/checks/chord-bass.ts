import { chordCheck } from './support/chordCheck';

export const chordBass = chordCheck({
  code: 'chord-bass',
  severity: 'hint',
  title: 'Another note in the bass',
  verdict: 'bass',
  meaning:
    'The note behind the slash is meant to be the lowest, and another note is. A chord without a slash may have any of its tones in the bass.',
  mending: 'Write the bass that sounds, leave the slash out, or play the bass that is written.',
  examples: {
    raises: [
      'chords |D/F#    |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'chords |C/G     |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |--------|\n',
      'chords |Am/E    |\nE      |0-------|\nB      |1-------|\nG      |2-------|\nD      |2-------|\nA      |0-------|\nE      |--------|\n',
    ],
    quiet: [
      'chords |D/F#    |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |2-------|\n',
      'chords |C       |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |3-------|\n',
      'chords |C/G     |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |3-------|\n',
    ],
  },
});
