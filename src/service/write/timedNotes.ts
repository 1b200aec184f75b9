import { add, type Fraction } from '../../music/fraction';
import { nextBar, type Canvas } from './canvas';
import type { NamedPitch, PitchedPiece } from './typedPitches';

/** Notes that begin together; times are those of the canvas. */
export interface Moment {
  readonly notes: readonly NamedPitch[];
  readonly onset: Fraction;
  /** When the next piece that strikes or stops begins, or the text ends. */
  readonly end: Fraction;
}

/** A text in time. */
export interface TimedNotes {
  readonly moments: readonly Moment[];
  /** Times at which whatever rings is stopped. */
  readonly silences: readonly Fraction[];
  readonly end: Fraction;
}

/**
 * Lays pieces out in time from where the canvas begins to be written on.
 * @param value the length of what has none of its own, in quarter notes
 */
export function timed(pieces: readonly PitchedPiece[], value: Fraction, canvas: Canvas): TimedNotes {
  const moments: { notes: readonly NamedPitch[]; onset: Fraction; end: Fraction }[] = [];
  const silences: Fraction[] = [];
  let time = canvas.from;
  let sounds = false;
  const goTo = (next: Fraction): void => {
    time = next;
    const last = moments.at(-1);
    if (sounds && last) last.end = time;
  };
  for (const piece of pieces) {
    if (piece.kind === 'bar') {
      goTo(nextBar(canvas, time));
      continue;
    }
    if (piece.kind === 'strike') {
      moments.push({ notes: piece.notes, onset: time, end: time });
      sounds = true;
    }
    if (piece.kind === 'silence') {
      if (sounds) silences.push(time);
      sounds = false;
    }
    goTo(add(time, piece.length ?? value));
  }
  return { moments, silences, end: time };
}
