import type { Key } from '../key';
import { fifthsOf, nameAtFifths, nearestFifths, simplify } from '../lineOfFifths';
import { formatPitchName, pitchClassOf } from '../noteName';
import { rootFifths } from './chordSpelling';
import { readChordName } from './readChordName';

/**
 * A written chord some half steps away. The writer's own symbols stay; root and bass move. A text that is no chord,
 * and `N.C.`, come back as they are.
 * @param key the key that the moved chord is in, which spells it; without one it takes the fewest accidentals
 * @example transposeWrittenChord('CM7/E', 2) // 'DM7/F#'
 */
export function transposeWrittenChord(text: string, halfSteps: number, key?: Key): string {
  const read = readChordName(text);
  const steps = Math.round(halfSteps);
  if (!read.ok || !read.value.root || (steps % 12 === 0 && !key)) return text;
  const { root, bass, tones } = read.value;
  const pitchClass = (((pitchClassOf(root) + steps) % 12) + 12) % 12;
  const sounding = tones.filter(({ need }) => need === 'must').map(({ degree }) => degree);
  const newRoot = rootFifths(pitchClass, sounding, key, []);
  const lead = text.length - text.trimStart().length;
  const rootEnd = lead + lengthOfNote(text.slice(lead));
  // An altered degree right behind the root would be read as the root's own sign.
  const symbol = text.slice(rootEnd).replace(/^[#b♯♭]+\d+/u, '($&)');
  const moved = text.slice(0, lead) + formatPitchName(simplify(nameAtFifths(newRoot)));
  if (!bass) return moved + symbol;
  const bassClass = (((pitchClassOf(bass) + steps) % 12) + 12) % 12;
  // As far from the root as it was written, so that D/F# becomes E/G#.
  const far = fifthsOf(bass) - fifthsOf(root);
  const newBass = formatPitchName(simplify(nameAtFifths(nearestFifths(bassClass, newRoot + far))));
  return (
    moved +
    symbol.replace(
      /([/\\]\s*)[A-G][#b♯♭]*(\s*)$/u,
      (_, slash: string, blanks: string) => slash + newBass + blanks,
    )
  );
}

/** Length of the root at the start of a chord name; a second flat before a digit is the digit's. */
function lengthOfNote(text: string): number {
  return /^[A-G](?:##|♯♯|[#♯]|[b♭](?:[b♭](?!\d))?)?/u.exec(text)?.[0].length ?? 0;
}
