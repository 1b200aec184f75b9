import { readChordName } from '../../../music/chord/readChordName';
import { writtenMask } from '../../../music/chord/writtenChord';
import { formatKey, type Key } from '../../../music/key';
import type { Header } from '../../../notation/header';
import { openChord } from '../openStrings';
import { triadName } from '../wantedChords';

/** The chords that a player tries first in a tuning. */
export interface EverydayChords {
  /** `D major`. */
  readonly key: string;
  /** Whether the key is written; else it is that of the open strings. */
  readonly written: boolean;
  /** Six names, from the first degree up. */
  readonly chords: readonly string[];
}

const DEGREES = [0, 1, 2, 3, 4, 5, 6] as const;

/**
 * The six triads of the key in force that are not diminished: one, two, three, four, five and six in a major key
 * (common practice, no source). Without a key the open strings give one: minor where their chord has a minor third;
 * where they make no chord, the lowest-placed string's note is its tonic.
 * @example everydayChords(headerInG).chords // ['G', 'Am', 'Bm', 'C', 'D', 'Em']
 */
export function everydayChords(header: Header): EverydayChords {
  const key = header.key ?? keyOfOpenStrings(header);
  const chords = DEGREES.map((degree) => triadName(key, degree)).filter((name) => !name.endsWith('dim'));
  return { key: formatKey(key), written: header.key !== undefined, chords };
}

function keyOfOpenStrings({ tuning }: Header): Key {
  const open = openChord(tuning);
  const lowest = tuning.strings[0]?.pitches[0].name ?? { letter: 'C', alter: 0 };
  const tonic = open?.root ?? { letter: lowest.letter, alter: lowest.alter };
  const read = open && readChordName(open.name);
  const minor = read?.ok === true && (writtenMask(read.value) & (1 << 3)) !== 0;
  return { tonic, mode: minor ? 'minor' : 'major' };
}
