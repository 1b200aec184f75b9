import type { Snippet } from './snippet';

/** Bar lines and repeats. */
const GUITAR = { instrument: 'guitar', tuning: null, capo: null, kept: [] } as const;

export const BARS: readonly Snippet[] = [
  {
    ...GUITAR,
    name: 'repeats-colons',
    why: 'the repeat signs the notation has',
    systems: [['1:0+3:0+6:3 2:1 1:3 3:0', '1:3 3:0 2:0']],
    repeats: [{ system: 0, firstBar: 0, lastBar: 0, times: 2 }],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'repeats-stars',
    why: 'stars on two strings for the dots of a repeat',
    systems: [['2:0+5:2 3:0 2:0 3:0', '2:1+5:3 3:0 2:1 3:0']],
    repeats: [{ system: 0, firstBar: 0, lastBar: 1, times: 2 }],
    guesses: ['bars'],
  },
  {
    ...GUITAR,
    name: 'repeats-small-o',
    why: 'a small o on two strings for the dots of a repeat, which is no open string',
    systems: [['2:3 3:2 2:3 3:2 2:2 3:2']],
    repeats: [{ system: 0, firstBar: 0, lastBar: 0, times: 2 }],
    guesses: ['bars'],
  },
  {
    ...GUITAR,
    name: 'repeats-several-passages',
    why: 'two repeated passages in one system, the second without a sign at its start of its own',
    systems: [
      ['5:0 5:2 4:0 4:1 4:2', '1:0+6:0 2:0 1:0 2:0', '1:3+6:0 2:3 1:2 2:3', '1:0+2:0+3:1+4:2+5:2+6:0'],
    ],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'times-two-behind',
    why: 'x2 behind a line in the middle',
    systems: [['5:2 3:0 2:0 3:0 3:0 2:0', '5:3 3:0 2:1 3:0 3:0 2:1']],
    repeats: [{ system: 0, firstBar: 0, lastBar: 1, times: 2 }],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'times-in-brackets',
    why: 'a number of times in brackets; and a word only, which stays',
    systems: [['4:2+5:2+6:0 4:2+5:2+6:0 5:2 5:0 6:3'], ['4:5+5:5+6:3 4:5+5:5+6:3 5:5 5:3 6:3']],
    repeats: [{ system: 0, firstBar: 0, lastBar: 0, times: 4 }],
    remarks: ['(repeat)'],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'double-bar-sign',
    why: 'the one-character double bar',
    systems: [['1:0+4:0 2:3 1:2 2:3', '1:3 2:3 3:2']],
    guesses: ['bars'],
  },
  {
    ...GUITAR,
    name: 'capital-I-for-bars',
    why: 'a capital I for every bar line',
    systems: [['1:0+4:2+5:3 2:1 1:0 2:1', '1:2+6:2 2:3 1:2 2:3']],
    guesses: ['bars'],
  },
  {
    ...GUITAR,
    name: 'exclamation-marks-for-bars',
    why: 'an exclamation mark for every bar line',
    systems: [['1:0+5:0 2:1 1:0 2:1', '1:3+6:3 2:0 1:2 2:0']],
    guesses: ['bars'],
  },
  {
    ...GUITAR,
    name: 'bars-not-under-each-other',
    why: 'a dash too few and one too many at the end of a bar: the second bar is played together all the same',
    systems: [['1:0+2:1+3:0+4:2+5:3 1:0+2:1+3:0+4:2+5:3', '1:3+2:0+3:0+4:0+5:2+6:3 1:3+2:0+3:0+4:0+5:2+6:3']],
    guesses: ['alignment', 'bars'],
  },
  {
    ...GUITAR,
    name: 'bars-of-unequal-length',
    why: 'a short bar, a long one, and one with nothing in it',
    systems: [['1:0+6:0', '4:0 4:2 3:0 3:2 2:1 1:0', '', '1:3+2:3+3:0+4:0+5:2+6:3']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'no-bar-at-the-end',
    why: 'the last bar is not closed',
    systems: [['1:0 2:1 3:0 4:2', '3:0+6:3 2:0 1:3']],
    guesses: [],
  },
];
