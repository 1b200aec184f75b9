import type { Fingerboard } from '../../instrument/sounding';
import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import { handOptions } from '../../playing/hand/options';
import { findShapes, type Shape } from '../../playing/shapes/findShapes';
import type { WantedChord } from '../../playing/shapes/wanted';
import { targetOf } from '../grip/grip';
import type { Settings } from '../records';

/** Answers kept for a neck; a song asks for its few chords over and over. */
const MOST = 200;
const known = new WeakMap<Fingerboard, Map<string, readonly Shape[]>>();

/** The shapes of a chord under a header, remembered. */
export function foundShapes(
  wanted: WantedChord,
  header: Header,
  { reach, thumb }: Settings,
  { limit, highestFret }: { readonly limit: number; readonly highestFret: number },
): readonly Shape[] {
  const board = fingerboardOf(header);
  let answers = known.get(board);
  if (!answers) known.set(board, (answers = new Map<string, readonly Shape[]>()));
  const { scaleLength, fretting } = header;
  const { root, required, optional, fifth, oneOf, bass } = wanted;
  const key = [
    root,
    required,
    optional,
    fifth,
    oneOf,
    bass,
    reach,
    thumb,
    scaleLength,
    fretting,
    limit,
    highestFret,
  ].join();
  let found = answers.get(key);
  if (!found) {
    found = findShapes(wanted, targetOf(header, { reach }), {
      limit,
      highestFret,
      hand: handOptions({ thumb }),
    });
    if (answers.size >= MOST) answers.clear();
    answers.set(key, found);
  }
  return found;
}
