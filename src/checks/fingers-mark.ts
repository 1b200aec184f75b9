import { markCheck } from './support/rowMarks';

export const fingersMark = markCheck({
  code: 'fingers-mark',
  title: 'No finger of the fretting hand',
  row: 'fingers',
  meaning:
    'A `fingers` row has the fingers of the fretting hand: `1` index, `2` middle, `3` ring, `4` little finger, `T` thumb, `0` an open string. Marks that touch belong to one chord.',
  mending: 'Write one of these marks; the picking hand has its own row.',
  fits: /^[0-4T]+$/i,
  expected: '1 2 3 4 for fingers, T for the thumb and 0 for an open string',
  examples: {
    raises: [
      'fingers |1   5   3   4   |\nG       |1---2---3---4---|\n',
      'fingers |p   i   m   a   |\nG       |1---2---3---4---|\n',
      'fingers |1-2         4   |\nG       |1---2---3---4---|\n',
    ],
    quiet: [
      'fingers |1   2   3   4   |\nG       |1---2---3---4---|\n',
      'fingers |134 T   0   t   |\nG       |1---2---0---4---|\n',
      'hand    |index   ring    |\nG       |1---2---3---4---|\n',
    ],
  },
});
