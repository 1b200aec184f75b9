import { formatKey, keyScale } from '../../music/key';
import { formatPitchName, pitchClassOf } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import { scaleSets, scaleSetsInWords } from './scaleSets';
import type { SheetScale } from './sheetAnswer';

/** The frets of the key's scale; null where no key is written. Under a full capo the key is as played, and so are frets. */
export function scaleAnswer(header: Header): SheetScale | null {
  const { key } = header;
  if (!key) return null;
  const notes = keyScale(key);
  const shift = capoShift(header);
  const sets = scaleSets(
    fingerboardOf(header),
    notes.map((note) => pitchClassOf(note) + shift),
  );
  const name = formatKey(key);
  return {
    name,
    notes: notes.map(formatPitchName),
    sets,
    words: `${name}: ${scaleSetsInWords(sets)}`,
  };
}
