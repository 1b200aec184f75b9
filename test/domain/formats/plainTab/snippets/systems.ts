import type { Snippet } from './snippet';

/** How several systems follow each other, and what the whole is wrapped in. */
const GUITAR = { instrument: 'guitar', tuning: null, capo: null, kept: [] } as const;

export const SYSTEMS: readonly Snippet[] = [
  {
    ...GUITAR,
    name: 'systems-one-under-the-other',
    why: 'three systems with no line between: the labels start again',
    systems: [['1:0+5:3 2:1 1:0 2:1'], ['1:3+6:3 2:0 1:3 2:0'], ['1:1+4:3 2:1 1:1 2:1']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'systems-without-labels-or-gaps',
    why: 'twelve lines without labels are two systems of six',
    systems: [['5:3 3:0 2:1 3:0 1:0'], ['6:3 3:0 2:0 3:0 1:3']],
    guesses: ['labels'],
  },
  {
    ...GUITAR,
    name: 'systems-far-apart',
    why: 'several blank lines between, one chord each',
    systems: [['1:0+2:1+3:0+4:2+5:3'], ['1:3+2:0+3:0+4:0+5:2+6:3']],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'glued-to-its-text',
    why: 'text touches the staves above and below, with no blank line anywhere',
    systems: [['5:3 2:1 6:2 2:1 5:3 2:1 6:2 2:1'], ['4:0 2:3 6:2 2:3 4:0 2:3 6:2 2:3']],
    kept: ['intro, twice through', 'now the verse, softer', 'and stop'],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'two-guitars',
    why: 'two players, each with a staff and a heading',
    systems: [['2:3+3:2 2:1+3:2 2:0+3:0 3:2'], ['4:0 5:0 6:3 5:0']],
    kept: ['Guitar 1, Ane', 'Guitar 2, Per'],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'times-of-a-recording',
    why: 'minutes and seconds, a range of frets: prose',
    systems: [['4:0 3:2 2:3 1:3 1:2 1:0']],
    kept: ['0:42  second verse, no drums', '1:03 - 1:10', '1:10 - 1:25  again, up an octave (frets 12-15)'],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'markdown-fence',
    why: 'a page with a heading, a link, a fence and a list',
    systems: [['4:0 3:2 2:3 4:0 3:2 2:3 4:0']],
    kept: [
      '# Oskerry evening',
      'Here is the **second** part, after the [map](map.md):',
      '* play it softly',
      '* no pick',
    ],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'quoted-mail',
    why: 'every line quoted once',
    systems: [['5:0 3:2 2:1 1:0 2:1 3:2']],
    kept: ['hi, here is the start as I know it', 'is the E at the top right?'],
    guesses: [],
  },
  {
    ...GUITAR,
    name: 'quoted-twice',
    why: 'a quotation of a quotation',
    systems: [['5:0 4:2 3:2 4:2 5:0']],
    guesses: [],
  },
];
