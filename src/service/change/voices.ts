import type { PassageNote } from '../../playing/passage';

/** Where a note stands among what sounds when it begins. */
export interface Voice {
  /** Nothing higher sounds. */
  readonly tune: boolean;
  /** Nothing lower sounds. */
  readonly bass: boolean;
}

/**
 * The voice of each note, by id: what begins with it and what rings on when it begins decides. A note that is neither
 * tune nor bass is an inner one; muted strokes are.
 */
export function voicesOf(notes: readonly PassageNote[]): ReadonlyMap<number, Voice> {
  const inOrder = [...notes].sort((a, b) => a.onset - b.onset);
  const voices = new Map<number, Voice>();
  let sounding: PassageNote[] = [];
  let at = 0;
  while (at < inOrder.length) {
    const onset = inOrder[at]?.onset ?? 0;
    const begun: PassageNote[] = [];
    for (let note = inOrder[at]; note && note.onset - onset <= TOGETHER; note = inOrder[++at])
      begun.push(note);
    sounding = [...sounding.filter(({ end }) => end > onset + TOGETHER), ...begun];
    const pitches = sounding.flatMap(({ midi }) => midi ?? []);
    const [low, high] = [Math.min(...pitches), Math.max(...pitches)];
    for (const { id, midi } of begun)
      voices.set(id, { tune: midi !== undefined && midi === high, bass: midi !== undefined && midi === low });
  }
  return voices;
}

const TOGETHER = 1e-9;

export function isInner(voice: Voice | undefined): boolean {
  return !voice || (!voice.tune && !voice.bass);
}
