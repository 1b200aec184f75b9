import type { SheetAnswer, SheetSlideChord } from '../sheetAnswer';

/** What stands on the handout, before anyone thinks of paper. */
export interface HandoutContent {
  readonly title: string;
  /** Lines under the title. */
  readonly facts: readonly string[];
  readonly strings: HandoutTable;
  readonly retuning: {
    readonly heading: string;
    /** In order, to be numbered. */
    readonly steps: readonly string[];
    /** What is worth knowing beside. */
    readonly notes: readonly string[];
    readonly cautions: readonly string[];
  };
  readonly barres: HandoutTable & { readonly remark: string };
  /** Under headings of their own; left out where there is nothing. */
  readonly lists: readonly { readonly heading: string; readonly lines: readonly HandoutLine[] }[];
  readonly shapes: { readonly heading: string; readonly shapes: readonly HandoutShape[] };
}

export interface HandoutTable {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Indices of the rows that matter most. */
  readonly main: readonly number[];
}

export interface HandoutLine {
  readonly text: string;
  /** One of the things that the line before tells of. */
  readonly below: boolean;
}

/** One shape of a chord. */
export interface HandoutShape {
  readonly chord: string;
  /** `x 3 2 0 1 0`; or why there is none. */
  readonly text: string;
  /** An SVG document of its own; undefined where there is none. */
  readonly svg: string | undefined;
}

/** Places of a bar that are told for each chord: more fill the page and help nobody. */
const SLIDE_PLACES = 3;

/** The sheet as it stands on a handout. */
export function handoutContent(sheet: SheetAnswer, shapes: HandoutContent['shapes']): HandoutContent {
  const { tuning, open, retuning, barres, scale, slide } = sheet;
  const named = tuning.name === null ? [] : [tuning.notes];
  return {
    title: tuning.title,
    facts: [[...named, ...tuning.facts].join('  ·  '), `${open.words}.`],
    strings: stringTable(sheet),
    retuning: {
      heading: `Retuning from ${retuning.from.name ?? retuning.from.notes}`,
      steps: retuning.same
        ? []
        : [
            ...retuning.steps.map(({ words, check }) => `${words}.${check === '' ? '' : ` ${check}.`}`),
            `${retuning.lastCheck}.`,
          ],
      notes: (retuning.same ? [retuning.words] : retuning.carriesOver.words).map((line) => `${line}.`),
      cautions: retuning.cautions,
    },
    barres: {
      heading: 'Straight barres',
      columns: ['Fret', 'Chord', 'Degree'],
      rows: barres.frets.map(({ fret, chord, sounds, notes, degree }) => [
        fret === 0 ? 'open' : String(fret),
        chord === null ? notes.join(' ') : chord + (sounds === null ? '' : ` (sounds ${sounds})`),
        // What it is counted from stands below.
        degree?.replace(/ above the open chord$/, ' above') ?? '',
      ]),
      main: barres.frets.flatMap(({ main }, at) => (main ? [at] : [])),
      remark: [barres.words, barres.remark]
        .filter((text) => text !== '')
        .map((text) => `${text}.`)
        .join(' '),
    },
    lists: [
      ...(scale
        ? [
            {
              heading: `Scale of ${scale.name}`,
              lines: scale.words
                .slice(scale.name.length + 2)
                .split('; ')
                .map(plainLine),
            },
          ]
        : []),
      ...(slide ? [{ heading: 'Places of the bar', lines: slideLines(slide.chords) }] : []),
    ],
    shapes,
  };
}

function stringTable({ strings, tuneBy }: SheetAnswer): HandoutTable {
  return {
    heading: 'Strings',
    columns: ['String', 'Note', 'Hertz', 'In the open chord', 'Tune it by'],
    rows: strings.map(({ number, note, pitches, role }) => [
      String(number),
      note,
      pitches.map(({ frequency }) => frequency.toFixed(2)).join(' / '),
      role ?? '–',
      tuneBy.find((check) => check.string === number)?.words ?? 'a tuner or a fork',
    ]),
    main: [],
  };
}

function plainLine(text: string): HandoutLine {
  return { text, below: false };
}

function slideLines(chords: readonly SheetSlideChord[]): readonly HandoutLine[] {
  return chords.flatMap(({ words, places }) => [
    plainLine(`${words}.`),
    ...places
      .filter(({ slant }, at) => slant !== 0 || at === 0)
      .slice(0, SLIDE_PLACES)
      .map((place) => ({ text: place.words, below: true })),
  ]);
}
