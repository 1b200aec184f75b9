/**
 * The sixty readings of the notation as data, written from the design's pages `cases.md` and `notation.md` alone.
 * Columns count from a line's first `|` (column 0); times are quarter notes as `n/d`, or `n` for a whole number,
 * from the system's start; pitches are MIDI numbers (MIDI 1.0: C4 = 60). What a case leaves out is not settled by
 * those pages and is not to be tested.
 */
import type { FieldName } from '../../../src/notation/fieldNames';
import type { ParsedLine } from '../../../src/notation/parsedLine';
import type { NoteKind, TechniqueKind } from '../../../src/notation/reading';
import type { RowName } from '../../../src/notation/rowNames';

/** One line by itself: rows 1–30, and the line of row 48. */
export interface LineCase {
  /** Row of cases.md. */
  readonly n: number;
  readonly text: string;
  readonly kind: ParsedLine['kind'];
  /** String lines: the label's notes as `Bb3` or `B` (two for a course), or its string number. */
  readonly label?: { readonly notes: readonly string[] } | { readonly number: number };
  /** String lines: how many stretches with at least one column stand between bar signs. */
  readonly bars?: number;
  /** String lines: the run ends where it begins. */
  readonly empty?: true;
  /** String lines: texts of the pieces that are no sign. */
  readonly junk?: readonly string[];
  /** String lines: look-alikes of `-` or `|` were read. */
  readonly lookAlikes?: true;
  readonly remark?: string;
  /** Times in all, of a string line's remark or of a section. */
  readonly times?: number;
  readonly field?: FieldName;
  readonly value?: string;
  readonly row?: RowName;
  readonly word?: string;
  /** Texts of a row's marks. */
  readonly marks?: readonly string[];
  /** A row's word that was nearly written. */
  readonly nearRow?: Exclude<RowName, 'text'>;
  readonly section?: string;
  /** Prose: what it nearly is, or `silent` where nothing is told. */
  readonly nearMiss?:
    | 'silent'
    | { readonly kind: 'field'; readonly field: FieldName }
    | { readonly kind: 'scale' }
    | { readonly kind: 'string-line' };
}

const SILENT = { kind: 'prose', nearMiss: 'silent' } as const;
const STRING_LINE = { kind: 'prose', nearMiss: { kind: 'string-line' } } as const;

export const LINE_CASES: readonly LineCase[] = [
  { n: 1, text: 'e|--0--2--|', kind: 'string', label: { notes: ['E'] }, bars: 1 },
  { n: 2, text: 'b |--3--|', kind: 'string', label: { notes: ['B'] }, bars: 1 },
  { n: 3, text: 'bb3|----|', kind: 'string', label: { notes: ['Bb3'] }, bars: 1 },
  { n: 4, text: 'E2/E3|0---|', kind: 'string', label: { notes: ['E2', 'E3'] }, bars: 1 },
  { n: 5, text: '14|0---|', kind: 'string', label: { number: 14 }, bars: 1 },
  { n: 5, text: '15|0---|', ...STRING_LINE },
  { n: 6, text: 'D |0|', kind: 'string', label: { notes: ['D'] }, bars: 1 },
  { n: 7, text: 'E|', kind: 'string', label: { notes: ['E'] }, bars: 0, empty: true },
  { n: 8, text: 'E||--0--||', kind: 'string', label: { notes: ['E'] }, bars: 1 },
  { n: 9, text: 'E|--5q--|', kind: 'string', label: { notes: ['E'] }, bars: 1, junk: ['q'] },
  // Rows 10–13, 28 and 30 say "prose" only; that nothing is told follows from "Near misses" in notation.md.
  { n: 10, text: '1|2|3', ...SILENT },
  { n: 11, text: '1 | something', ...SILENT },
  { n: 12, text: 'A | D | E | A |', ...SILENT },
  { n: 13, text: 'G|C|G|D|', ...SILENT },
  { n: 14, text: '|---|---|---|', ...SILENT },
  { n: 14, text: '-----------', ...SILENT },
  { n: 15, text: '|--0--2--|', ...STRING_LINE },
  { n: 16, text: 'E:--0--2--|', ...STRING_LINE },
  { n: 17, text: 'E│--0--2--│', kind: 'string', label: { notes: ['E'] }, bars: 1, lookAlikes: true },
  { n: 17, text: 'E|––0––2––|', kind: 'string', label: { notes: ['E'] }, bars: 1, lookAlikes: true },
  {
    n: 18,
    text: 'E|--0--| see bar 3 | 4',
    kind: 'string',
    label: { notes: ['E'] },
    bars: 1,
    remark: 'see bar 3 | 4',
  },
  { n: 19, text: 'cuont |1 & 2 & |', kind: 'row', row: 'text', word: 'cuont', nearRow: 'count' },
  { n: 20, text: 'PM |----  |', kind: 'row', row: 'palm mute', word: 'PM', marks: ['----'] },
  { n: 21, text: 'Capo: 2', kind: 'field', field: 'capo', value: '2' },
  { n: 22, text: 'Time: 4/4', kind: 'field', field: 'meter', value: '4/4' },
  { n: 23, text: 'scale: D major', kind: 'prose', nearMiss: { kind: 'scale' } },
  { n: 24, text: 'scale length: 648 mm', kind: 'field', field: 'scale length', value: '648 mm' },
  { n: 25, text: 'tunning: DADGAD', kind: 'prose', nearMiss: { kind: 'field', field: 'tuning' } },
  { n: 26, text: 'Band: The Gate', ...SILENT },
  { n: 26, text: 'So: play it again', ...SILENT },
  { n: 27, text: '[Chorus] x2', kind: 'section', section: 'Chorus', times: 2 },
  { n: 28, text: '[see the page](there)', ...SILENT },
  { n: 29, text: '\uFEFFtitle: Gate', kind: 'field', field: 'title', value: 'Gate' },
  { n: 30, text: 'x02210', ...SILENT },
  { n: 48, text: 'E|--0--|x3', kind: 'string', label: { notes: ['E'] }, bars: 1, remark: 'x3', times: 3 },
];

/** One tuning value: rows 31–40 and 60. */
export type TuningCase = {
  readonly n: number;
  readonly instrument: string;
  readonly value: string;
} & (
  | {
      /** Low string to high, `D2/D3` for a course. */
      readonly notes: string;
      /** Numbers players give the strings, in the same order, where the row names them. */
      readonly numbers?: readonly number[];
    }
  | {
      /** Kind of the error, as `Notice.kind` names it. */
      readonly error: 'one-note' | 'step-count';
      /** What the message must say. */
      readonly says?: string;
      /** A value that must be among those offered. */
      readonly offers?: string;
    }
);

export const TUNING_CASES: readonly TuningCase[] = [
  { n: 31, instrument: 'guitar', value: 'D-A-D-G-A-D', notes: 'D2 A2 D3 G3 A3 D4' },
  { n: 32, instrument: 'guitar', value: 'EADGBe', notes: 'E2 A2 D3 G3 B3 E4' },
  { n: 32, instrument: 'guitar', value: 'eadgbe', notes: 'E2 A2 D3 G3 B3 E4' },
  { n: 33, instrument: 'guitar', value: 'C6', notes: 'C2 A2 C3 G3 C4 E4' },
  { n: 33, instrument: 'ukulele', value: 'C6', notes: 'G4 C4 E4 A4' },
  { n: 33, instrument: 'lap steel', value: 'C6', notes: 'C3 E3 G3 A3 C4 E4' },
  { n: 34, instrument: 'guitar', value: 'A', error: 'one-note', offers: 'open A' },
  { n: 35, instrument: 'guitar', value: 'open A', notes: 'E2 A2 E3 A3 C#4 E4' },
  { n: 36, instrument: 'guitar', value: 'standard down 1', notes: 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4' },
  { n: 36, instrument: 'guitar', value: 'standard down 1 step', notes: 'D2 G2 C3 F3 A3 D4' },
  {
    n: 37,
    instrument: 'guitar',
    value: 'standard -2 0 0',
    error: 'step-count',
    says: '3 numbers for 6 strings',
  },
  {
    n: 38,
    instrument: 'guitar',
    value: 'B E A D G B E',
    notes: 'B1 E2 A2 D3 G3 B3 E4',
    numbers: [7, 6, 5, 4, 3, 2, 1],
  },
  { n: 39, instrument: 'guitar', value: 'G D G B D', notes: 'G2 D3 G3 B3 D4', numbers: [5, 4, 3, 2, 1] },
  { n: 40, instrument: 'guitar', value: 'A E A D F# B', notes: 'A1 E2 A2 D3 F#3 B3' },
  { n: 40, instrument: 'guitar', value: 'C G D A E B', notes: 'C2 G2 D3 A3 E4 B4' },
  { n: 60, instrument: '12-string guitar', value: 'DADGAD', notes: 'D2/D3 A2/A3 D3/D4 G3/G4 A3/A3 D4/D4' },
];

/** A technique of a note in a cell. */
export interface CellTechnique {
  readonly kind: TechniqueKind;
  /** The fret written for its end. */
  readonly toFret?: number;
  /** The MIDI number it ends on. */
  readonly to?: number;
  /** The column its sign stands in, where that is not obvious. */
  readonly column?: number;
}

export interface CellNote {
  readonly kind?: NoteKind;
  readonly column: number;
  /** Undefined for `x`. */
  readonly fret: number | undefined;
  /** All its techniques, in any order. */
  readonly techniques: readonly CellTechnique[];
  /** Index in the case's notes of the one a sign joins it to; left out where it is struck. */
  readonly joinedFrom?: number;
}

/** The signs of a string line: rows 41–47. Guitar in standard, 4/4; G3 is string 3. */
export interface CellCase {
  readonly n: number;
  readonly text: string;
  /** All notes in order of column. */
  readonly notes?: readonly CellNote[];
  /** Columns of the stops. */
  readonly stops?: readonly number[];
  /** What is told: where it stands (any column within it) and, where a split is offered, the frets offered. */
  readonly problem?: {
    readonly columns: readonly [from: number, to: number];
    readonly severity: 'error' | 'hint' | 'any';
    readonly split?: readonly number[];
  };
}

export const CELL_CASES: readonly CellCase[] = [
  {
    n: 41,
    text: 'G3|5/7-------------|',
    notes: [
      { column: 1, fret: 5, techniques: [{ kind: 'slide', to: 62 }] },
      { column: 3, fret: 7, techniques: [], joinedFrom: 0 },
    ],
  },
  {
    n: 41,
    text: 'G3|5////7----------|',
    notes: [
      { column: 1, fret: 5, techniques: [{ kind: 'slide', to: 62 }] },
      { column: 6, fret: 7, techniques: [], joinedFrom: 0 },
    ],
  },
  {
    n: 41,
    text: 'G3|5-/-7-----------|',
    notes: [
      { column: 1, fret: 5, techniques: [{ kind: 'slide', to: 62 }] },
      { column: 5, fret: 7, techniques: [], joinedFrom: 0 },
    ],
  },
  {
    n: 41,
    text: 'G3|------5/|-7------|',
    notes: [
      { column: 7, fret: 5, techniques: [{ kind: 'slide', to: 62 }] },
      { column: 11, fret: 7, techniques: [], joinedFrom: 0 },
    ],
  },
  {
    n: 42,
    text: 'G3|5---/7----------|',
    notes: [
      { column: 1, fret: 5, techniques: [] },
      { column: 6, fret: 7, techniques: [{ kind: 'slide-from-nowhere', column: 5 }] },
    ],
  },
  {
    n: 42,
    text: 'G3|5/--7-----------|',
    notes: [
      { column: 1, fret: 5, techniques: [{ kind: 'slide-to-nowhere', column: 2 }] },
      { column: 5, fret: 7, techniques: [] },
    ],
    problem: { columns: [1, 6], severity: 'hint' },
  },
  {
    n: 43,
    text: 'G3|7b9--r7---------|',
    notes: [
      {
        column: 1,
        fret: 7,
        techniques: [
          { kind: 'bend', toFret: 9, to: 64 },
          { kind: 'release', toFret: 7, to: 62, column: 6 },
        ],
      },
    ],
  },
  // A quarter step is a quarter of a whole step: half a half step.
  {
    n: 44,
    text: 'G3|7b1/4-----------|',
    notes: [{ column: 1, fret: 7, techniques: [{ kind: 'bend', to: 62.5 }] }],
  },
  {
    n: 44,
    text: 'G3|13b13.5---------|',
    notes: [{ column: 1, fret: 13, techniques: [{ kind: 'bend', toFret: 13.5, to: 68.5 }] }],
  },
  {
    n: 45,
    text: 'G3|7pb9------------|',
    notes: [{ column: 1, fret: 7, techniques: [{ kind: 'pre-bend', toFret: 9, to: 64 }] }],
  },
  {
    n: 45,
    text: 'G3|7p5-------------|',
    notes: [
      { column: 1, fret: 7, techniques: [] },
      { column: 3, fret: 5, techniques: [{ kind: 'pull-off' }], joinedFrom: 0 },
    ],
  },
  {
    n: 45,
    text: 'G3|5tr7------------|',
    notes: [{ column: 1, fret: 5, techniques: [{ kind: 'trill', toFret: 7, to: 62 }] }],
  },
  {
    n: 45,
    text: 'G3|t12p5-----------|',
    notes: [
      { column: 2, fret: 12, techniques: [{ kind: 'tap', column: 1 }] },
      { column: 5, fret: 5, techniques: [{ kind: 'pull-off' }], joinedFrom: 0 },
    ],
  },
  {
    n: 46,
    text: 'G3|5.-7------------|',
    notes: [
      { column: 1, fret: 5, techniques: [] },
      { column: 4, fret: 7, techniques: [] },
    ],
    stops: [2],
  },
  { n: 46, text: 'G3|12.5------------|', problem: { columns: [1, 5], severity: 'any' } },
  { n: 47, text: 'G3|45--------------|', problem: { columns: [1, 3], severity: 'error', split: [4, 5] } },
  { n: 47, text: 'G3|00--------------|', problem: { columns: [1, 3], severity: 'error', split: [0, 0] } },
  {
    n: 47,
    text: 'G3|x3--------------|',
    notes: [
      { kind: 'muted', column: 1, fret: undefined, techniques: [] },
      { kind: 'fretted', column: 2, fret: 3, techniques: [] },
    ],
  },
];

export interface SystemCase {
  readonly n: number;
  /** A whole document. */
  readonly text: string;
  /** The times at which notes of the only system begin, each once, ascending. */
  readonly onsets?: readonly string[];
  readonly bars?: readonly { readonly onset: string; readonly length: string; readonly pickup: boolean }[];
  /** Number of the part's first bar. */
  readonly firstBar?: number;
  readonly repeats?: readonly {
    readonly firstBar: number;
    readonly lastBar: number;
    readonly times: number;
  }[];
  readonly timing?: 'counted' | 'inferred';
  /** String numbers, top line first. */
  readonly strings?: readonly number[];
  /** What each open string written sounds, top line first. */
  readonly sounding?: readonly string[];
  /** How many problems are told. */
  readonly told?: number;
  /** The parts in the order they begin, and the place of each system. */
  readonly parts?: readonly string[];
  readonly places?: readonly { readonly part: string; readonly firstBar: number; readonly onset: string }[];
}

const ONE_BAR = [{ onset: '0', length: '4', pickup: false }] as const;
const ON_THE_BEATS = ['0', '1', '2', '3'] as const;

export const SYSTEM_CASES: readonly SystemCase[] = [
  // The label has an octave, so that the one line fits one string only.
  {
    n: 48,
    text: 'E2|--0--|x3\n',
    bars: ONE_BAR,
    repeats: [{ firstBar: 0, lastBar: 0, times: 3 }],
  },
  {
    n: 49,
    text: `tuning: half step down

E|0---------------|
B|0---------------|
G|0---------------|
D|0---------------|
A|0---------------|
E|0---------------|
`,
    strings: [1, 2, 3, 4, 5, 6],
    sounding: ['Eb4', 'Bb3', 'Gb3', 'Db3', 'Ab2', 'Eb2'],
    onsets: ['0'],
    told: 1,
  },
  {
    n: 50,
    text: 'G|--x---x---x---x-|\n',
    onsets: ['1/2', '3/2', '5/2', '7/2'],
    bars: ONE_BAR,
    timing: 'inferred',
    told: 0,
  },
  { n: 51, text: 'G|-0---0---0---0---|\n', onsets: ON_THE_BEATS, bars: ONE_BAR, timing: 'inferred' },
  { n: 51, text: 'G|--0---0---0---0---|\n', onsets: ON_THE_BEATS, bars: ONE_BAR, timing: 'inferred' },
  { n: 52, text: 'G|-8--10--12--10--|\n', onsets: ON_THE_BEATS, bars: ONE_BAR, timing: 'inferred' },
  { n: 52, text: 'G|8---10--12--10--|\n', onsets: ON_THE_BEATS, bars: ONE_BAR, timing: 'inferred' },
  { n: 53, text: 'G|-0--2--3--5-|\n', onsets: ON_THE_BEATS, bars: ONE_BAR, timing: 'inferred' },
  {
    n: 54,
    text: `meter: 6/8

count |1 & a 2 & a |
G     |0-2-4-5-4-2-|
`,
    onsets: ['0', '1/2', '1', '3/2', '2', '5/2'],
    bars: [{ onset: '0', length: '3', pickup: false }],
    timing: 'counted',
    told: 0,
  },
  {
    n: 55,
    text: `meter: 4/4

count |4 & |1 & 2 & 3 & 4 & |
G     |0-2-|4---5---4---2---|
`,
    onsets: ['0', '1/2', '1', '2', '3', '4'],
    bars: [
      { onset: '0', length: '1', pickup: true },
      { onset: '1', length: '4', pickup: false },
    ],
    firstBar: 0,
    timing: 'counted',
    told: 0,
  },
  {
    n: 56,
    text: `meter: 12/8

count |1 2 3 4 5 6 7 8 9 101112|
G     |----------------0-2-4-5-|
`,
    onsets: ['4', '9/2', '5', '11/2'],
    bars: [{ onset: '0', length: '6', pickup: false }],
    timing: 'counted',
    told: 0,
  },
  {
    n: 57,
    text: `B|10--------------|
G|-8--------------|
`,
    onsets: ['0'],
    bars: ONE_BAR,
  },
  {
    n: 57,
    text: `B|<12>------------|
G|0---------------|
`,
    onsets: ['0'],
    bars: ONE_BAR,
  },
  {
    n: 57,
    text: `B|11--------------|
G|-12-------------|
`,
    onsets: ['0', '1/4'],
    bars: ONE_BAR,
  },
  {
    n: 58,
    text: `B|:0---0---0---0---:|
G|-0---0---0---0----|
`,
    onsets: ON_THE_BEATS,
    bars: ONE_BAR,
    repeats: [{ firstBar: 0, lastBar: 0, times: 2 }],
  },
  {
    n: 59,
    text: `part: A

G|0---0---0---0---|

part: B

G|2---2---2---2---|

part: A

G|4---4---4---4---|
`,
    parts: ['A', 'B'],
    places: [
      { part: 'A', firstBar: 1, onset: '0' },
      { part: 'B', firstBar: 1, onset: '0' },
      { part: 'A', firstBar: 2, onset: '4' },
    ],
  },
];
