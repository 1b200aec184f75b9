import type { Snippet } from './snippet';

/** Looks like tab at a glance, and is none: comes back as it was. */
const NO_TAB = {
  instrument: null,
  tuning: null,
  capo: null,
  systems: [],
  kept: [],
  guesses: [],
  quiet: true,
} as const;

export const NO_TAB_AT_ALL: readonly Snippet[] = [
  { ...NO_TAB, name: 'not-tab-table', why: 'a table of strings and gauges' },
  { ...NO_TAB, name: 'not-tab-mail', why: 'separators of a mail, and its signature' },
  { ...NO_TAB, name: 'not-tab-drawing', why: 'a boat, and boxes with numbers' },
  { ...NO_TAB, name: 'not-tab-drums', why: 'a drum pattern: lines and dashes, but no strings' },
  { ...NO_TAB, name: 'not-tab-chord-grid', why: 'chords between bar lines' },
  { ...NO_TAB, name: 'not-tab-ferry-times', why: 'piers A, B and E with times in columns' },
  { ...NO_TAB, name: 'not-tab-list', why: 'lists with dashes and numbers' },
];
