import { failed, ok, type Result } from '../music/result';
import type { Instrument } from './instrument';
import { eitherOf, nameKey, nearestNames } from './nameMatching';

/** What a row of the table below says; the rest follows from the tuning. */
interface Row {
  readonly name: string;
  readonly aliases?: readonly string[];
  readonly tuning: string;
  readonly frets: number;
  readonly scaleLength: number;
  readonly gauges?: string;
  readonly firstFrets?: readonly number[];
  readonly partners?: readonly (number | undefined)[];
  readonly slide?: boolean;
}

/*
 * Tunings: the handbook table in test/domain/instrument/tuningTable.ts, where each row's source stands.
 * Frets and scale lengths: common practice, no source; makers differ, so `frets:` and `scale length:` say otherwise.
 * Gauges: the sets that string makers publish as light or regular, from memory, save the guitar's .010-.046, whose
 * tensions are checked against published unit weights. Left out where makers do not agree on a set.
 */
const ROWS: readonly Row[] = [
  {
    name: 'guitar',
    aliases: ['six-string guitar', 'acoustic guitar', 'electric guitar', 'steel-string guitar'],
    tuning: 'E2 A2 D3 G3 B3 E4',
    frets: 22,
    scaleLength: 648,
    gauges: '46w 36w 26w 17 13 10',
  },
  {
    name: 'classical guitar',
    aliases: ['nylon-string guitar', 'Spanish guitar'],
    tuning: 'E2 A2 D3 G3 B3 E4',
    frets: 19,
    scaleLength: 650,
    gauges: '43w 35w 29w 40 32 28',
  },
  {
    name: '12-string guitar',
    aliases: ['12-string', '12-string acoustic guitar', '12-string electric guitar'],
    tuning: 'E2/E3 A2/A3 D3/D4 G3/G4 B3/B3 E4/E4',
    frets: 20,
    scaleLength: 648,
    gauges: '47w/27w 39w/18 30w/12 23w/8 14/14 10/10',
    partners: [12, 12, 12, 12, 0, 0],
  },
  {
    name: 'seven-string guitar',
    aliases: ['7-string'],
    tuning: 'B1 E2 A2 D3 G3 B3 E4',
    frets: 24,
    scaleLength: 648,
    gauges: '59w 46w 36w 26w 17 13 10',
  },
  {
    name: 'eight-string guitar',
    aliases: ['8-string'],
    tuning: 'F#1 B1 E2 A2 D3 G3 B3 E4',
    frets: 24,
    scaleLength: 686,
    gauges: '74w 59w 46w 36w 26w 17 13 10',
  },
  {
    name: 'Russian seven-string guitar',
    aliases: ['Russian guitar'],
    tuning: 'D2 G2 B2 D3 G3 B3 D4',
    frets: 20,
    scaleLength: 648,
  },
  {
    name: 'baritone guitar',
    aliases: ['baritone'],
    tuning: 'B1 E2 A2 D3 F#3 B3',
    frets: 22,
    scaleLength: 686,
    gauges: '68w 56w 44w 26w 18 14',
  },
  {
    name: 'six-string bass guitar',
    aliases: ['bass guitar an octave down', 'tic-tac bass', 'octave-down guitar'],
    tuning: 'E1 A1 D2 G2 B2 E3',
    frets: 24,
    scaleLength: 762,
  },
  { name: 'terz guitar', aliases: ['terz'], tuning: 'G2 C3 F3 Bb3 D4 G4', frets: 18, scaleLength: 540 },
  {
    name: 'requinto',
    aliases: ['requinto guitar'],
    tuning: 'A2 D3 G3 C4 E4 A4',
    frets: 19,
    scaleLength: 540,
  },
  {
    name: 'tenor guitar',
    aliases: ['four-string guitar'],
    tuning: 'C3 G3 D4 A4',
    frets: 19,
    scaleLength: 584,
    gauges: '32w 22w 14 10',
  },
  {
    name: 'lap steel',
    aliases: ['lap steel guitar', 'steel guitar', 'Hawaiian guitar', 'slide guitar on the lap'],
    tuning: 'C3 E3 G3 A3 C4 E4',
    frets: 30,
    scaleLength: 572,
    slide: true,
  },
  {
    name: 'bass',
    aliases: ['bass guitar', 'electric bass', 'four-string bass'],
    tuning: 'E1 A1 D2 G2',
    frets: 21,
    scaleLength: 864,
    gauges: '105w 85w 65w 45w',
  },
  {
    name: 'five-string bass',
    aliases: ['five-string bass guitar'],
    tuning: 'B0 E1 A1 D2 G2',
    frets: 24,
    scaleLength: 864,
    gauges: '130w 105w 85w 65w 45w',
  },
  {
    name: 'six-string bass',
    tuning: 'B0 E1 A1 D2 G2 C3',
    frets: 24,
    scaleLength: 864,
    gauges: '130w 105w 85w 65w 45w 32w',
  },
  {
    name: 'ukulele',
    aliases: ['uke', 'soprano ukulele', 'concert ukulele', 'tenor ukulele'],
    tuning: 'G4 C4 E4 A4',
    frets: 18,
    scaleLength: 381,
  },
  { name: 'baritone ukulele', aliases: ['baritone uke'], tuning: 'D3 G3 B3 E4', frets: 19, scaleLength: 508 },
  {
    name: 'banjo',
    aliases: ['five-string banjo'],
    tuning: 'G4 D3 G3 B3 D4',
    frets: 22,
    scaleLength: 667,
    gauges: '10 23w 16 12 10',
    firstFrets: [5, 0, 0, 0, 0],
  },
  {
    name: 'tenor banjo',
    tuning: 'C3 G3 D4 A4',
    frets: 19,
    scaleLength: 578,
    gauges: '30w 20w 13 9',
  },
  { name: 'plectrum banjo', tuning: 'C3 G3 B3 D4', frets: 22, scaleLength: 667 },
  {
    name: 'mandolin',
    tuning: 'G3/G3 D4/D4 A4/A4 E5/E5',
    frets: 20,
    scaleLength: 352,
    gauges: '40w/40w 26w/26w 16/16 11/11',
    partners: [0, 0, 0, 0],
  },
  {
    name: 'mandola',
    aliases: ['tenor mandola'],
    tuning: 'C3/C3 G3/G3 D4/D4 A4/A4',
    frets: 20,
    scaleLength: 432,
    gauges: '52w/52w 34w/34w 23w/23w 14/14',
    partners: [0, 0, 0, 0],
  },
  {
    name: 'octave mandolin',
    aliases: ['octave mandola'],
    tuning: 'G2/G2 D3/D3 A3/A3 E4/E4',
    frets: 20,
    scaleLength: 540,
    gauges: '46w/46w 32w/32w 22w/22w 12/12',
    partners: [0, 0, 0, 0],
  },
  {
    name: 'Irish bouzouki',
    aliases: ['bouzouki'],
    tuning: 'G2/G2 D3/D3 A3/A3 D4/D4',
    frets: 22,
    scaleLength: 660,
    partners: [0, 0, 0, 0],
  },
];

/** Every instrument Pegbox knows, the commonest first within its kin. */
export const INSTRUMENTS: readonly Instrument[] = ROWS.map(instrumentOf);

/** What holds where no instrument is written. */
export const GUITAR: Instrument = instrumentNamed('guitar');

const BY_KEY: ReadonlyMap<string, Instrument> = new Map(
  INSTRUMENTS.flatMap((instrument) =>
    [instrument.name, ...instrument.aliases].map((name) => [nameKey(name), instrument] as const),
  ),
);

/**
 * The instrument of that name or alias; case, hyphens and spaces do not count, `seven` is `7`.
 * @example findInstrument('Twelve String Guitar')?.name // '12-string guitar'
 */
export function findInstrument(text: string): Instrument | undefined {
  return BY_KEY.get(nameKey(text));
}

/**
 * Reads the value of `instrument:`.
 * Errors: `no-instrument` for an empty value, `unknown-instrument` with the nearest names as suggestions.
 * @example readInstrument('lap steel') // { ok: true, value: { name: 'lap steel', … } }
 */
export function readInstrument(text: string): Result<Instrument> {
  const instrument = findInstrument(text);
  if (instrument) return ok(instrument);
  const start = text.length - text.trimStart().length;
  const written = text.trim();
  if (written === '') {
    return failed('no-instrument', 'Name an instrument, such as guitar, bass or ukulele.', 0, text.length, [
      'guitar',
      'bass',
      'ukulele',
    ]);
  }
  const names = nearestNames(
    written,
    INSTRUMENTS.map(({ name }) => name),
  );
  const near =
    names.length > 0 ? ` Did you mean ${eitherOf(names)}?` : ' Use a name such as guitar, bass or banjo.';
  return failed(
    'unknown-instrument',
    `Pegbox knows no instrument “${written}”.${near}`,
    start,
    start + written.length,
    names,
  );
}

function instrumentOf(row: Row): Instrument {
  const count = row.tuning.split(' ').length;
  return {
    name: row.name,
    aliases: row.aliases ?? [],
    usualTuning: row.tuning,
    frets: row.frets,
    scaleLength: row.scaleLength,
    usualGauges: row.gauges,
    firstFrets: row.firstFrets ?? Array<number>(count).fill(0),
    partners: row.partners ?? Array<undefined>(count).fill(undefined),
    slide: row.slide ?? false,
  };
}

function instrumentNamed(name: string): Instrument {
  const instrument = INSTRUMENTS.find((candidate) => candidate.name === name);
  if (!instrument) throw new Error(`The table of instruments has no ${name}.`);
  return instrument;
}
