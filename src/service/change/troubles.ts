import type { TabDocument } from '../../notation/tabDocument';
import { entriesOf } from './placing';
import type { Slice } from './slices';

/**
 * Why a passage cannot be worked on before it is mended: a note of it sounds no pitch where it stands. Undefined where
 * there is nothing to mend.
 */
export function troubleIn(document: TabDocument, slices: readonly Slice[]): string | undefined {
  const wrong = entriesOf(document, slices).find(
    ({ note }) => note.kind !== 'muted' && note.pitches.length === 0,
  );
  if (!wrong) return undefined;
  const { bar, note } = wrong;
  const what = note.kind === 'fretted' ? `fret ${note.fret ?? 0}` : 'the harmonic';
  return `In bar ${bar} ${what} on string ${note.string} sounds no pitch; mend that first, and try again.`;
}
