import { chordCheck } from './support/chordCheck';

export const chordDisagrees = chordCheck({
  code: 'chord-disagrees',
  severity: 'warning',
  title: 'Chord against what sounds',
  verdict: 'disagrees',
  meaning:
    'The name is compared with all that sounds from its mark to the next, struck or still ringing. A tone that it promises never sounds while its rival does (F# instead of F in Dm), or most of what sounds is something else. Under a full capo the name as played and the sounding name are both right.',
  mending: 'Write the name of what sounds, which is offered, or change the notes.',
  examples: {
    raises: [
      'chords |Dm      |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'chords |G       |\nE      |0-------|\nB      |1-------|\nG      |0-------|\nD      |2-------|\nA      |3-------|\nE      |--------|\n',
      'capo: 2\n\nchords |F       |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
    ],
    quiet: [
      'chords |D       |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'capo: 2\n\nchords |D       |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'capo: 2\n\nchords |E       |\nE      |2-------|\nB      |3-------|\nG      |2-------|\nD      |0-------|\nA      |--------|\nE      |--------|\n',
      'chords |C       |\nB      |1---3---|\n',
    ],
  },
});
