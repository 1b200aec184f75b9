import { isReentrant } from '../instrument/isReentrant';
import type { Tuning } from '../instrument/tuning';
import type { ChordContext } from '../music/chord/nameChord';
import type { Header } from './header';
import { playedSpelling, soundingSpelling } from './headerViews';

interface Contexts {
  readonly sounding: ChordContext;
  readonly played: ChordContext;
}

const known = new WeakMap<Header, Contexts>();

function contextsOf(header: Header): Contexts {
  let contexts = known.get(header);
  if (!contexts) {
    const reentrant = isReentrant(header.tuning);
    contexts = {
      sounding: { ...soundingSpelling(header), reentrant },
      played: { ...playedSpelling(header), reentrant },
    };
    known.set(header, contexts);
  }
  return contexts;
}

/** What the names of sounding chords depend on under a header: key and tuning as they sound. */
export function soundingContext(header: Header): ChordContext {
  return contextsOf(header).sounding;
}

/** The same for the names of shapes, as if a full capo were not there. */
export function playedContext(header: Header): ChordContext {
  return contextsOf(header).played;
}

/** What the names of chords depend on in a tuning without a key. */
export function tuningContext(tuning: Tuning): ChordContext {
  return {
    tuningNames: tuning.strings.flatMap(({ pitches }) => pitches.map(({ name }) => name)),
    reentrant: isReentrant(tuning),
  };
}
