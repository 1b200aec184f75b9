import type { ChordName } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import { writtenMask } from '../../music/chord/writtenChord';
import { formatPitchName, pitchClassOf } from '../../music/noteName';

/**
 * A chord's name without the bass, where the bass is one of its own tones: a barre is told by its chord, whichever of
 * its tones lies lowest. A foreign bass stays.
 * @example plainName(nameChord([50, 55, 59, 62]).names[0]) // 'G', and not 'G/D'
 */
export function plainName({ name, root, bass }: ChordName): string {
  const slash = `/${formatPitchName(bass)}`;
  if (!name.endsWith(slash)) return name;
  const plain = name.slice(0, -slash.length);
  const read = readChordName(plain);
  const above = (pitchClassOf(bass) - pitchClassOf(root) + 12) % 12;
  return read.ok && (writtenMask(read.value) & (1 << above)) !== 0 ? plain : name;
}
