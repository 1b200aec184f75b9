import { markCheck } from './support/rowMarks';

export const pickingMark = markCheck({
  code: 'picking-mark',
  title: 'No finger of the picking hand',
  row: 'picking',
  meaning:
    'A `picking` row has the letters of the picking hand: `p` thumb, `i` `m` `a` the fingers, `c` the little finger, `t` the thumb too; `d` and `u` for strokes down and up, `x` for a muted one. Letters that touch are one stroke.',
  mending: 'Write one of these letters, or use a row of text.',
  fits: /^[pimactdux]+$/i,
  expected: 'p i m a c t for fingers, d u for strokes and x',
  examples: {
    raises: [
      'picking |p   i   q   a   |\nG       |0---2---4---5---|\n',
      'picking |1   2   3   4   |\nG       |0---2---4---5---|\n',
      'picking |d   up! d   u   |\nG       |0---2---4---5---|\n',
    ],
    quiet: [
      'picking |p   i   m   a   |\nG       |0---2---4---5---|\n',
      'picking |pim D   u   x   |\nG       |0---2---4---5---|\n',
      'strum   |v   ^   v   ^   |\nG       |0---2---4---5---|\n',
    ],
  },
});
