import type { TabDocument } from '../../notation/tabDocument';
import { fingerboardOf } from '../../notation/headerViews';
import type { SilentFret } from '../../instrument/sounding';
import type { Place, Settings } from '../records';
import type { ChangeResult } from '../serviceApi';
import { putFretsChange } from './putFretsChange';

/** A fret to put on a string at a place. */
export interface PutFretRequest {
  /** Player's number. */
  readonly string: number;
  /** As it is written. */
  readonly fret: number;
}

/**
 * Puts a fret on a string in the column of a place, whatever line of the system the place is on. What stands there on
 * that string makes way; every other note keeps its exact time.
 * @example putFret(document, { line: 4, character: 7 }, { string: 3, fret: 2 }, DEFAULT_SETTINGS)
 */
export function putFret(
  document: TabDocument,
  place: Place,
  { string, fret }: PutFretRequest,
  _settings: Settings,
): ChangeResult {
  const { header } = document.systemAt(place.line) ?? {};
  const read = header && fingerboardOf(header).read(header.tuning.strings.length - string, fret);
  if (read && !read.ok && read.reason !== 'no-such-string')
    return { error: `Fret ${fret} cannot be played on string ${string}: ${rangeWords(read)}.` };
  const what = fret === 0 ? `String ${string} open is written` : `String ${string} fret ${fret} is written`;
  return putFretsChange(document, place, new Map([[string, fret]]), what);
}

function rangeWords({ least, most }: SilentFret): string {
  if (least === undefined) return 'only the open string, 0, is there';
  return least === 1 ? `it has 0 to ${most}` : `it has 0, and ${least} to ${most}`;
}
