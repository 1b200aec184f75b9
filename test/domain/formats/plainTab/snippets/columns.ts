import type { Snippet } from './snippet';

/** Columns that do not say by themselves what sounds together, and characters that move them. */
const GUITAR = { instrument: 'guitar', tuning: null, capo: null, kept: [] } as const;

export const COLUMNS: readonly Snippet[] = [
  {
    ...GUITAR,
    name: 'nine-under-ten-first-digits',
    why: '9 under the 1 of 10',
    systems: [['1:10+2:9 1:12+2:10 1:10+2:9 3:9']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'nine-under-ten-last-digits',
    why: '9 under the 0 of 10',
    systems: [['1:10+2:9 1:12+2:10 1:10+2:9 3:9']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'nine-under-ten-whole-chords',
    why: 'whole chords with one and two digits, by their last digits',
    systems: [
      ['1:9+2:10+3:9+4:7+5:7 1:10+2:10+3:10+4:12+5:12 1:9+2:9+3:10+4:11+5:11+6:10 1:12+2:12+3:12+4:14+6:10'],
    ],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'widened-by-two-digits',
    why: 'every fret of two digits pushes its own line by one: chords all the same',
    systems: [['1:8+2:8+3:9 1:10+2:8+3:9 1:12+2:10+3:9 1:10+2:8+3:9']],
    guesses: ['alignment'],
  },
  {
    ...GUITAR,
    name: 'widened-bars',
    why: 'two-digit frets make one bar wider on some lines; the bar behind begins together',
    systems: [['1:0+2:1+3:0+4:2+5:3 1:3+2:0+3:0+4:0+6:3', '1:12+2:13+3:12 1:10+2:10+3:9', '1:3+6:3 4:0']],
    guesses: ['alignment', 'bars'],
  },
  {
    ...GUITAR,
    name: 'ragged-lines',
    why: 'every line ends where its writer stopped',
    systems: [['1:0+4:2+5:3 2:1 3:0 2:1']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'spaces-for-dashes',
    why: 'strings drawn with spaces; the frets stand in their columns',
    systems: [['5:3 4:2 3:0 2:1+3:0+4:2+5:3']],
    guesses: [],
    uncounted: 'no dashes',
  },
  {
    ...GUITAR,
    name: 'indented',
    why: 'spaces before the labels and behind the lines',
    systems: [['3:0+5:3 2:1 1:0 2:1']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'en-dashes',
    why: 'en dashes and drawn bar lines, one column each',
    systems: [['3:0+5:3 2:1 1:0 3:0+6:3 2:0 1:3']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'long-dashes-for-two',
    why: 'a text program made one long dash of every two; only so counted are the lines of one length',
    systems: [['4:2+5:3 1:0 2:1 3:0 1:3 2:1']],
    guesses: ['alignment'],
  },
  {
    ...GUITAR,
    name: 'tab-behind-the-label',
    why: 'a tab character between label and bar line; the labels tell open D',
    tuning: 'open D',
    systems: [['3:0+6:0 2:0 1:0 3:1+6:0 2:0 1:0']],
    guesses: ['tuning', 'tabs'],
  },
  {
    ...GUITAR,
    name: 'tabs-that-line-up',
    why: 'tab characters bring lines of unequal length to the same column',
    systems: [['1:0+2:10+3:0+6:0', '1:3+6:3 2:0']],
    guesses: ['tabs'],
  },
  {
    ...GUITAR,
    name: 'no-break-spaces',
    why: 'no-break spaces before and behind labels and lines, as from a web page',
    systems: [['5:3 4:2 3:0 2:1 1:0 2:1']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'windows-line-ends',
    why: 'CR LF, and a byte order mark in front',
    systems: [['6:2 4:0 3:2 3:2 2:3']],
    kept: ['Waves of wax, slow', 'hold the last one'],
    guesses: [],
  },
];
