import { HAND_CONSTANTS, type HandConstantName } from '../playing/hand/constants';
import { markdownTable } from './markdownText';

/** What each constant of the hand model is, in words; under the headings of the page. */
const GROUPS: readonly {
  readonly heading: string;
  readonly note: string;
  readonly names: Readonly<Partial<Record<HandConstantName, string>>>;
}[] = [
  {
    heading: 'What no cost can buy',
    note: 'How far apart along the neck two fingers may stop. A grip beyond a limit is not played.',
    names: {
      limit12: 'first to second finger',
      limit13: 'first to third finger',
      limit14: 'first to fourth finger',
      limit23: 'second to third finger',
      limit24: 'second to fourth finger',
      limit34: 'third to fourth finger',
    },
  },
  {
    heading: 'Grips',
    note: 'What holding a grip costs.',
    names: {
      relaxed: 'width at rest, from which stretch is counted',
      stretch: 'stretch',
      beyond: 'stretch past one finger a fret',
      skipped: 'skipped finger',
      order: 'fingers out of order',
      finger: 'each finger down',
      finger3: 'third finger',
      finger4: 'little finger',
      noIndex: 'grip without the index',
      barre1: 'barre of the first finger',
      barre2: 'barre of the second finger',
      barre3: 'barre of the third finger',
      barre4: 'barre of the fourth finger',
      barreString: 'long barre',
      barreOver: 'barre above a lower note',
      barreMuted: 'silent string under a barre',
      muted: 'muted string inside a strum',
      apart: 'fingers apart across the strings',
      position: 'up the neck',
      openHigh: 'open string up the neck',
    },
  },
  {
    heading: 'The same grips inside a passage',
    note: 'What of it counts where one grip follows another.',
    names: {
      chordShare: 'share of a chord’s grip',
      lineShare: 'share of a line’s grip',
      linePosition: 'up the neck, in a line',
      lineFinger3: 'third finger, in a line',
      lineFinger4: 'little finger, in a line',
      lineOpenHigh: 'open string up the neck, in a line',
    },
  },
  {
    heading: 'Moves',
    note: 'What going from one grip to the next costs.',
    names: {
      travel: 'travel of the hand',
      shortest: 'shortest time reckoned with',
      shift: 'shift',
      freeShift: 'shift under open strings',
      setDown: 'finger set down',
      moved: 'finger moved',
      crossing: 'crossing of strings',
      reach: 'reach without a shift',
      cut: 'note cut short',
    },
  },
];

/** The one table of the hand model as a page in Markdown: every constant with value, unit and reason. */
export function handTable(): string {
  const pieces = GROUPS.flatMap(({ heading, note, names }) => [
    `## ${heading}`,
    note,
    table(Object.entries(names)),
  ]);
  const named = new Set(GROUPS.flatMap(({ names }) => Object.keys(names)));
  const others = Object.keys(HAND_CONSTANTS).filter((name) => !named.has(name));
  const rest = others.length > 0 ? ['## Others', table(others.map((name) => [name, name]))] : [];
  return `${[...INTRODUCTION, ...pieces, ...rest].join('\n\n')}\n`;
}

const INTRODUCTION = [
  '# The hand',
  'A fingering that Pegbox finds is the least cost under these constants. It is not a claim of what a good player writes: shapes were fitted to one collection of chords, moves to no data at all. A cost has no unit of its own: 1 is a shift of the hand with a finger down.',
];

function table(entries: readonly (readonly [string, string])[]): string {
  const rows = entries.flatMap(([name, words]) => {
    const constant = Object.entries(HAND_CONSTANTS).find(([key]) => key === name)?.[1];
    return constant ? [[words, name, String(constant.value), constant.unit, constant.reason]] : [];
  });
  return markdownTable(['What', 'Name', 'Value', 'Unit', 'Reason'], rows);
}
