import guitar from '@tombatossals/chords-db/lib/guitar.json';
import ukulele from '@tombatossals/chords-db/lib/ukulele.json';
import { FAULTY_GUITAR, FAULTY_UKULELE } from '../../music/chord/formulas';
import { OPENS, targetOf, type Board } from '../boards';
import type { Target } from '../../../../src/playing/target';

/** A chord shape that people wrote down, with their fingers, as it stands on the neck. */
export interface HumanShape {
  /** Key, suffix and number within them. */
  readonly label: string;
  /** From the nut, low-placed string first; −1 is not played. */
  readonly frets: readonly number[];
  readonly fingers: readonly number[];
}

export interface Collection {
  readonly name: 'guitar' | 'ukulele';
  readonly board: Board;
  readonly target: Target;
  /** All positions, listed faults left out. */
  readonly count: number;
  /** One for each set of strings and frets, the first that is listed. */
  readonly shapes: readonly HumanShape[];
}

interface Database {
  readonly chords: Readonly<
    Record<
      string,
      readonly {
        key: string;
        suffix: string;
        positions: readonly { frets: number[]; fingers: number[]; baseFret: number }[];
      }[]
    >
  >;
}

function collection(
  name: Collection['name'],
  database: Database,
  faulty: readonly string[],
  board: Board,
): Collection {
  const known = new Map<string, HumanShape>();
  let count = 0;
  for (const { key, suffix, positions } of Object.values(database.chords).flat()) {
    positions.forEach(({ frets, fingers, baseFret }, i) => {
      // A suffix that nothing says the meaning of (shared/facts/reference-libraries.md §2).
      if (faulty.includes(`${key} ${suffix} #${i + 1}`) || suffix === '7sg') return;
      count++;
      const shape = {
        label: `${key} ${suffix} #${i + 1}`,
        frets: frets.map((fret) => (fret <= 0 ? fret : fret + baseFret - 1)),
        fingers,
      };
      const places = shape.frets.join(' ');
      if (!known.has(places)) known.set(places, shape);
    });
  }
  return { name, board, target: targetOf(board), count, shapes: [...known.values()] };
}

/** The open data set @tombatossals/chords-db 0.5.1 (MIT), its listed faults excluded. */
export const HUMANS: readonly Collection[] = [
  collection('guitar', guitar, FAULTY_GUITAR, { opens: OPENS.standard, frets: 22, scaleLength: 648 }),
  collection('ukulele', ukulele, FAULTY_UKULELE, { opens: OPENS.ukulele, frets: 15, scaleLength: 345 }),
];

/**
 * Human finger numbers that no hand can follow (shared/facts/hand-model.md §1.5): a finger across a lower or an open
 * string, a finger missing or on an open string, one at two frets, fingers in the wrong order. Faults of the data: the
 * places can be held with other fingers in all of them.
 */
export const IMPOSSIBLE_FINGERS: readonly string[] = [
  'C 69 #1, C# mmaj11 #1, Eb mmaj11 #2, E sus2 #4, F 9b5 #4, G maj13 #1, Ab m11 #4, B maj7#5 #3, B mmaj9 #4',
  'C# sus2 #2, C# sus4 #3, C# maj13 #1, Eb 9b5 #3, Ab 7b9 #2, A maj7#5 #4, Bb 6 #3',
  'D 11 #4, B aug7 #2, E aug #3, G dim #3',
  'Ab maj11 #2, Eb alt #1',
].flatMap((list) => list.split(', '));

/** MIDI numbers of a shape, lowest string first. */
export function pitchesOf({ frets }: HumanShape, { opens }: Board): number[] {
  return frets.flatMap((fret, index) => (fret < 0 ? [] : [(opens[index] ?? NaN) + fret]));
}

/** A shape as a key: `x32010`. */
export function keyOf(frets: readonly number[]): string {
  return frets.map((fret) => (fret < 0 ? 'x' : fret)).join(' ');
}
