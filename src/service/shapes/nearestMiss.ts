import { ordinal } from '../../music/chord/degree';
import { writtenToneName } from '../../music/chord/writtenChord';
import { formatPitchName, pitchClassOf } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import { countTones, wantedChord, type WantedChord } from '../../playing/shapes/wanted';
import type { Settings } from '../records';
import type { AskedChord } from './askedChord';
import { foundShapes } from './foundShapes';

/** Why a chord has no shape, and what comes nearest: without its bass, or without one of its tones. */
export function nearestMiss(
  asked: AskedChord,
  header: Header,
  settings: Settings,
  highestFret: number,
): readonly string[] {
  const { wanted, name } = asked;
  const strings = header.tuning.strings.length;
  const needed = countTones(wanted.required);
  const first =
    needed > strings
      ? `${name} needs ${needed} tones at once, and there ${strings === 1 ? 'is one string' : `are ${strings} strings`}.`
      : header.fretting === 'slide'
        ? `No straight bar up to fret ${highestFret} gives ${name}.`
        : `No shape of ${name} up to fret ${highestFret} is within reach of the hand.`;
  return [first, nearest(asked, header, settings, highestFret)];
}

function nearest(
  { wanted, written }: AskedChord,
  header: Header,
  settings: Settings,
  highestFret: number,
): string {
  const found = (one: WantedChord): string | undefined => {
    const [shape] = foundShapes(one, header, settings, { limit: 1, highestFret });
    return shape?.frets.map((fret) => fret ?? 'x').join(' ');
  };
  const { root, bass } = written;
  if (!root) return '';
  const shift = capoShift(header);
  if (bass) {
    const plain = wantedChord({ ...written, bass: undefined }, shift);
    const free = plain && found(plain);
    if (free !== undefined)
      return `Nearest: ${free}, without ${formatPitchName(bass)} as the lowest note; ask for the chord without /${formatPitchName(bass)}.`;
  }
  // The tones that name it most go last.
  const order = [...written.tones].sort((a, b) => rank(b.degree.number) - rank(a.degree.number));
  for (const { degree } of order) {
    const tone = writtenToneName(root, degree);
    const bit = 1 << ((pitchClassOf(tone) + shift) % 12);
    if (!(wanted.required & bit)) continue;
    const without = found({ ...wanted, bass: undefined, required: wanted.required & ~bit });
    if (without !== undefined)
      return `Nearest: ${without}, which has no ${ordinal(degree.number)} (${formatPitchName(tone)}) and so is another chord.`;
  }
  return 'Nothing near it is either: try a plainer chord, a higher fret, or another tuning.';
}

/** A third names a chord more than a seventh, a seventh more than what lies above it. */
function rank(number: number): number {
  return number === 3 ? 0 : number;
}
