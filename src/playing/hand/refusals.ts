import type { Place } from '../places';
import { eachFingering, span, type Stop } from './fingering';
import type { Frame } from './frame';

/**
 * By what rules no fingers can hold some places: each rule that stands in the way, with the figures, strings by the
 * player's number and frets as they are written. Call it only where none can.
 */
export function refusals(places: readonly Place[], frame: Frame): string[] {
  const stopped = places.filter(({ stoppedFret }) => stoppedFret !== undefined);
  const stops = stopped.map(({ index, stoppedFret }) => ({ index, fret: stoppedFret ?? 0 }));
  let opens = 0;
  for (const { index, stoppedFret } of places) if (stoppedFret === undefined) opens |= 1 << index;
  if (frame.slide) return slideRefusals(stopped, frame);
  const found: string[] = [];
  const wide = tooWide(stopped, stops, frame);
  if (wide !== undefined) found.push(wide);
  const free = [[], [], [], [], []].map(() => [Infinity, Infinity, Infinity, Infinity, Infinity]);
  const loose: Frame = { ...frame, limits: free, span: Infinity };
  if (!holds(stops, opens, loose)) {
    if (
      frame.caps.barres === false &&
      holds(stops, opens, { ...loose, caps: { ...frame.caps, barres: true } })
    )
      found.push(
        `${stops.length} stopped strings and four fingers: it takes a barre, and barres are not wanted`,
      );
    else if (holds(stops, 0, loose)) found.push(openUnderBarre(opens, stops, loose));
    else found.push(tooMany(stopped, frame));
  } else if (found.length === 0) {
    found.push(`${strings(stopped, frame)}: no two fingers that have to stop them reach so far apart`);
  }
  return found;
}

function holds(stops: readonly Stop[], opens: number, frame: Frame): boolean {
  let held = false;
  eachFingering(stops, opens, frame, () => (held = true));
  return held;
}

/** The widest pair, if it is beyond what the hand spans. */
function tooWide(stopped: readonly Place[], stops: readonly Stop[], frame: Frame): string | undefined {
  const limit = Math.min(frame.span, frame.widest);
  const wide = span(stops, frame);
  if (frame.thumb || wide <= limit + 1e-6) return undefined;
  const fretOf = ({ stoppedFret }: Place): number => stoppedFret ?? 0;
  const low = stopped.reduce((a, b) => (fretOf(b) < fretOf(a) ? b : a));
  const high = stopped.reduce((a, b) => (fretOf(b) > fretOf(a) ? b : a));
  const [first, second] = low.index < high.index ? [low, high] : [high, low];
  return `strings ${frame.strings - first.index} and ${frame.strings - second.index}, frets ${first.fret} and ${second.fret}: ${Math.round(wide)} mm, the limit is ${Math.round(limit)}`;
}

/** Which open strings would have to lie under a finger that bars. */
function openUnderBarre(opens: number, stops: readonly Stop[], frame: Frame): string {
  const inside: number[] = [];
  for (let index = frame.strings - 1; index >= 0; index--) {
    const bit = 1 << index;
    if (opens & bit && holds(stops, opens & ~bit, frame)) inside.push(frame.strings - index);
  }
  const which = inside.length > 0 ? `string ${inside.join(' or ')}` : 'an open string';
  return `${stops.length} stopped strings and four fingers: it takes a barre, and ${which} has to ring open under it`;
}

function tooMany(stopped: readonly Place[], frame: Frame): string {
  const most = Math.min(4, frame.caps.fingers ?? 4);
  const barred = frame.caps.barres === false ? ' without a barre' : '';
  return `${strings(stopped, frame)}: more than ${most === 1 ? 'one finger' : `${most} fingers`} can stop${barred}`;
}

function slideRefusals(stopped: readonly Place[], frame: Frame): string[] {
  const frets = [...new Set(stopped.map(({ fret }) => fret))];
  if (frets.length > 1) return [`${strings(stopped, frame)}: one straight bar stops one fret`];
  return [`${strings(stopped, frame)}: an open string cannot ring under the bar between them`];
}

/** `strings 5, 4 and 2 at frets 1, 3 and 6`. */
function strings(stopped: readonly Place[], frame: Frame): string {
  const list = (words: readonly string[]): string =>
    words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
  const sorted = [...stopped].sort((a, b) => a.index - b.index);
  const numbers = sorted.map(({ index }) => String(frame.strings - index));
  const frets = sorted.map(({ fret }) => String(fret));
  return `${numbers.length === 1 ? 'string' : 'strings'} ${list(numbers)} at ${frets.length === 1 ? 'fret' : 'frets'} ${list(frets)}`;
}
