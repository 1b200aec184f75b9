import { chordCheck } from './support/chordCheck';

export const chordAdds = chordCheck({
  code: 'chord-adds',
  severity: 'information',
  title: 'More sounds than the chord says',
  verdict: 'adds',
  meaning:
    'All that the name says sounds, and something more: a note struck in the chord, or one that still rings from before for a beat or longer. Single notes of a melody are not told.',
  mending:
    'Write the fuller name, which is offered; or stop the string that rings on with a `.` at the chord’s first column.',
  examples: {
    raises: [
      'chords |D       |\nE      |0-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |0-------|\nE      |--------|\n\nchords |D       |\nE      |2-------|\nB      |0-------|\nG      |2-------|\nD      |0-------|\nA      |0-------|\nE      |--------|\n',
      'chords |C       |\nE      |0-------|\nB      |3-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |--------|\n',
      'chords |Am      |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |0-------|\nE      |--------|\n',
      'chords |G   |A      |\nE      |----|-------|\nB      |----|-------|\nG      |0---|--2----|\nD      |----|-------|\nA      |----|--0----|\nE      |3---|--0----|\n',
    ],
    quiet: [
      'chords |Cadd9   |\nE      |0-------|\nB      |3-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |--------|\n',
      'chords |C               |\nE      |0-------3-------|\nB      |1-----------3---|\nG      |0---------------|\nD      |2---------------|\nA      |3---------------|\nE      |----------------|\n',
      'chords |Am7     |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |0-------|\nE      |--------|\n',
    ],
  },
});
