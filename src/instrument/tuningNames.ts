/** The named tunings of the trade, as data. `tunings.ts` finds them. */

export interface TuningRow {
  /** The trade's name in its usual letters. */
  readonly name: string;
  readonly aliases: readonly string[];
  /** Notes with octaves, low string first. Where the instrument has courses one note stands for its course. */
  readonly notes: string;
  /** A remark for the reader, where there is something to know before tuning so. */
  readonly remark: string | undefined;
}

/*
 * Source: the handbook table of tunings, whose rows stand with their marks in
 * test/domain/instrument/tuningTable.ts; rows that are not there are common practice, no source.
 * Bare notes are no aliases: they are read as notes, and a test holds that they give the same tuning.
 * A name that goes back to one person's school is an alias only; the tuning then goes by its notes.
 */
const LIGHTER = 'Strung with lighter strings than usual: an ordinary set would break.';

const CAPO = (lower: string): string =>
  `Raises strings above standard; ${lower} with a capo at fret 2 sounds the same and asks less of the instrument.`;

function row(name: string, notes: string, aliases: readonly string[] = [], remark?: string): TuningRow {
  return { name, aliases, notes, remark };
}

const GUITAR_ROWS: readonly TuningRow[] = [
  row('standard', 'E2 A2 D3 G3 B3 E4', ['E standard']),
  row('half step down', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', [
    'half-step down',
    'Eb standard',
    'E flat',
    'D# standard',
  ]),
  row('whole step down', 'D2 G2 C3 F3 A3 D4', ['full step down', 'D standard']),
  row('drop D', 'D2 A2 D3 G3 B3 E4', ['dropped D']),
  row('double drop D', 'D2 A2 D3 G3 B3 D4', ['double dropped D']),
  row('drop C#', 'C#2 G#2 C#3 F#3 A#3 D#4', ['drop Db', 'dropped C#']),
  row('drop C', 'C2 G2 C3 F3 A3 D4', ['dropped C']),
  row('drop B', 'B1 F#2 B2 E3 G#3 C#4', ['dropped B']),
  row('DADGAD', 'D2 A2 D3 G3 A3 D4', ['D modal', 'Dsus4']),
  row('CGCFGC', 'C2 G2 C3 F3 G3 C4', ['C modal', 'Csus4']),
  row('DADEAD', 'D2 A2 D3 E3 A3 D4', ['Dsus2']),
  row('open D', 'D2 A2 D3 F#3 A3 D4', ['Vestapol']),
  row('open D minor', 'D2 A2 D3 F3 A3 D4', ['cross-note D', 'open Dm']),
  row('open E', 'E2 B2 E3 G#3 B3 E4', [], CAPO('open D')),
  row('open E minor', 'E2 B2 E3 G3 B3 E4', ['cross-note E', 'open Em'], CAPO('open D minor')),
  row('open G', 'D2 G2 D3 G3 B3 D4', ['Spanish', 'taro patch']),
  row('open G minor', 'D2 G2 D3 G3 Bb3 D4', ['open Gm']),
  row('G6', 'D2 G2 D3 G3 B3 E4', ['dropped G', 'drop G']),
  row('open A', 'E2 A2 E3 A3 C#4 E4', [], CAPO('open G')),
  row('open A minor', 'E2 A2 E3 A3 C4 E4', ['open Am'], CAPO('open G minor')),
  row('open C', 'C2 G2 C3 G3 C4 E4'),
  row('open C minor', 'C2 G2 C3 G3 C4 Eb4', ['open Cm']),
  row('C6', 'C2 A2 C3 G3 C4 E4'),
  row('CGDGCD', 'C2 G2 D3 G3 C4 D4', ['Orkney']),
  row('CGDGBD', 'C2 G2 D3 G3 B3 D4', ['C wahine']),
  row('DGDF#BD', 'D2 G2 D3 F#3 B3 D4', ['G wahine']),
  row('open F', 'C2 F2 C3 F3 A3 C4'),
  row('open B', 'B1 F#2 B2 F#3 B3 D#4'),
  row('lute', 'E2 A2 D3 F#3 B3 E4', ['third string to F#', '3rd to F#']),
  row('all fourths', 'E2 A2 D3 G3 C4 F4', ['fourths', 'P4', 'perfect fourths']),
  row(
    'all fifths',
    'C2 G2 D3 A3 E4 B4',
    ['fifths', 'P5', 'perfect fifths'],
    'On a full-size neck (648 mm) no plain steel string bears the high B4: string 1 needs a shorter neck or another note.',
  ),
  row('CGDAEG', 'C2 G2 D3 A3 E4 G4', ['new standard', 'new standard tuning'], LIGHTER),
  row('major thirds', 'E2 G#2 C3 E3 G#3 C4', ['all major thirds', 'M3']),
  row(
    'augmented fourths',
    'C2 F#2 C3 F#3 C4 F#4',
    ['all augmented fourths', 'tritones'],
    'Raises string 1 two half steps above standard, and string 2 one.',
  ),
  row('high strung', 'E3 A3 D4 G4 B3 E4', ['high-strung', 'Nashville'], LIGHTER),
  row(
    'five-string open G',
    'G2 D3 G3 B3 D4',
    ['open G five strings', 'open G without string 6'],
    'String 6 is off; the strings keep the numbers 5 to 1.',
  ),
];

const LAP_STEEL_ROWS: readonly TuningRow[] = [
  row('C6', 'C3 E3 G3 A3 C4 E4', ['standard']),
  row('open G', 'G2 B2 D3 G3 B3 D4', ['open G high bass', 'high bass G']),
  row('open A', 'A2 C#3 E3 A3 C#4 E4', ['open A high bass', 'high bass A']),
  row('open A low bass', 'E2 A2 E3 A3 C#4 E4', ['low bass A']),
  row('open G low bass', 'D2 G2 D3 G3 B3 D4', ['low bass G']),
  row('open D', 'D2 A2 D3 F#3 A3 D4'),
  row('open E', 'E2 B2 E3 G#3 B3 E4'),
  row('A6', 'C#3 E3 F#3 A3 C#4 E4'),
  row('E7', 'B2 D3 E3 G#3 B3 E4'),
  row('B11', 'B2 D#3 F#3 A3 C#4 E4'),
];

const FIFTHS_CGDA: readonly TuningRow[] = [
  row('standard', 'C3 G3 D4 A4', ['fifths']),
  row('DGBE', 'D3 G3 B3 E4', ['guitar tuning']),
  row('octave mandolin', 'G2 D3 A3 E4', ['Irish', 'low GDAE']),
];

/** Rows by the name of their instrument. The usual tuning comes first. */
export const TUNING_ROWS: Readonly<Record<string, readonly TuningRow[]>> = {
  guitar: GUITAR_ROWS,
  'classical guitar': GUITAR_ROWS,
  '12-string guitar': GUITAR_ROWS.filter(({ name }) => name !== 'high strung'),
  'lap steel': LAP_STEEL_ROWS,
  'seven-string guitar': [
    row('standard', 'B1 E2 A2 D3 G3 B3 E4', ['B standard']),
    row('drop A', 'A1 E2 A2 D3 G3 B3 E4', ['dropped A']),
  ],
  'eight-string guitar': [
    row('standard', 'F#1 B1 E2 A2 D3 G3 B3 E4', ['F# standard']),
    row('drop E', 'E1 B1 E2 A2 D3 G3 B3 E4', ['dropped E']),
  ],
  'Russian seven-string guitar': [row('open G', 'D2 G2 B2 D3 G3 B3 D4', ['standard', 'Russian'])],
  'baritone guitar': [
    row('baritone B', 'B1 E2 A2 D3 F#3 B3', ['standard', 'B standard', 'B']),
    row('baritone A', 'A1 D2 G2 C3 E3 A3', ['A standard']),
    row('drop A', 'A1 E2 A2 D3 F#3 B3', ['dropped A']),
  ],
  'six-string bass guitar': [row('standard', 'E1 A1 D2 G2 B2 E3', ['octave down'])],
  'terz guitar': [row('terz', 'G2 C3 F3 Bb3 D4 G4', ['standard'])],
  requinto: [row('requinto', 'A2 D3 G3 C4 E4 A4', ['standard'])],
  bass: [
    row('standard', 'E1 A1 D2 G2'),
    row('drop D', 'D1 A1 D2 G2', ['dropped D']),
    row('BEAD', 'B0 E1 A1 D2'),
    row('drop C', 'C1 G1 C2 F2', ['dropped C']),
  ],
  'five-string bass': [
    row('standard', 'B0 E1 A1 D2 G2', ['low B']),
    row('high C', 'E1 A1 D2 G2 C3', ['tenor']),
    row('drop A', 'A0 E1 A1 D2 G2', ['dropped A']),
  ],
  'six-string bass': [row('standard', 'B0 E1 A1 D2 G2 C3')],
  ukulele: [
    row('C6', 'G4 C4 E4 A4', ['standard', 'GCEA', 'high G', 're-entrant C6']),
    row('low G', 'G3 C4 E4 A4', ['linear C6', 'C6 low G']),
    row('D6', 'A4 D4 F#4 B4', ['re-entrant D6']),
  ],
  'baritone ukulele': [row('standard', 'D3 G3 B3 E4', ['G6'])],
  'tenor guitar': FIFTHS_CGDA,
  'tenor banjo': FIFTHS_CGDA,
  mandola: FIFTHS_CGDA.slice(0, 1),
  mandolin: [
    row('standard', 'G3 D4 A4 E5', ['fifths']),
    row('GDGD', 'G3 D4 G4 D5', ['cross GDGD', 'open fifths GD', 'cross tuning']),
  ],
  'octave mandolin': [row('standard', 'G2 D3 A3 E4', ['fifths']), row('GDAD', 'G2 D3 A3 D4')],
  'Irish bouzouki': [
    row('GDAD', 'G2 D3 A3 D4', ['standard', 'Irish']),
    row('GDAE', 'G2 D3 A3 E4', ['fifths', 'octave mandolin']),
  ],
  banjo: [
    row('open G', 'G4 D3 G3 B3 D4', ['standard']),
    row('drop C', 'G4 C3 G3 B3 D4', ['C tuning', 'standard C']),
    row('double C', 'G4 C3 G3 C4 D4'),
    row('sawmill', 'G4 D3 G3 C4 D4', ['G modal', 'mountain modal']),
    row('open D', 'F#4 D3 F#3 A3 D4'),
  ],
  'plectrum banjo': [row('standard', 'C3 G3 B3 D4', ['C tuning'])],
};
