import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import guitar from '@tombatossals/chords-db/lib/guitar.json';
import ukulele from '@tombatossals/chords-db/lib/ukulele.json';

/** One shape of the open data set @tombatossals/chords-db 0.5.1 (MIT). */
export interface Shape {
  readonly instrument: 'guitar' | 'ukulele';
  readonly key: string;
  readonly suffix: string;
  /** From 1 within its key and suffix. */
  readonly number: number;
  /** Relative to baseFret; 0 open, -1 muted; low string first. */
  readonly frets: readonly number[];
  readonly baseFret: number;
  /** The data set's own MIDI numbers, muted strings left out. */
  readonly midi: readonly number[];
}

interface Database {
  readonly chords: Readonly<
    Record<
      string,
      readonly {
        key: string;
        suffix: string;
        positions: readonly { frets: number[]; baseFret: number; midi: number[] }[];
      }[]
    >
  >;
}

export const GUITAR = shapesOf('guitar', guitar);
export const UKULELE = shapesOf('ukulele', ukulele);

function shapesOf(instrument: Shape['instrument'], database: Database): readonly Shape[] {
  return Object.values(database.chords).flatMap((entries) =>
    entries.flatMap(({ key, suffix, positions }) =>
      positions.map(({ frets, baseFret, midi }, i) => ({
        instrument,
        key,
        suffix,
        number: i + 1,
        frets,
        baseFret,
        midi,
      })),
    ),
  );
}

/** One line of data/grips.tsv: a shape in a tuning and the names that are right, the first choice first. */
export interface Grip {
  readonly tuning: string;
  readonly shape: string;
  readonly expected: readonly string[];
  readonly note: string;
}

/**
 * 329 shapes in 55 tunings with the names a player would give them, drawn up by hand for this project: common
 * practice, no source. `T7` and the like in the last column are rows of the project's own table of worked examples.
 */
export const GRIPS: readonly Grip[] = readFileSync(join(__dirname, '../data/grips.tsv'), 'utf8')
  .split('\n')
  .slice(1)
  .filter((line) => line !== '')
  .map((line) => {
    const [tuning = '', shape = '', expected = '', note = ''] = line.split('\t');
    return { tuning, shape, expected: expected.split(' | '), note };
  });

/** Frets of a shape: one sign a string (`x32010`) or words with blanks (`0 0 0 11 0 0`); undefined is muted. */
export function fretsOf(shape: string): readonly (number | undefined)[] {
  const signs = shape.includes(' ') ? shape.split(' ') : [...shape];
  return signs.map((sign) => (sign === 'x' ? undefined : Number(sign)));
}
