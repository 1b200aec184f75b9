import type { FoundPassage, SoundPattern, SoundWish } from './findAnswer';
import { foundWords } from './foundWords';
import type { SoundIndex, SoundTrack } from './soundIndex';
import type { ServiceError } from '../serviceApi';

/** How far, in half steps, a note may be off: tunings give thirds some cents lower, and quarter tones are other notes. */
const OFF = 0.3;

/**
 * Every passage that sounds like a pattern, in the same key or any other: moments one after the other in one part,
 * whose notes go by the same intervals.
 *
 * - As a tune, the highest note that begins at each moment counts; with `over`, moments all of whose notes lie below the
 *   tune's note before and after them are passed over.
 * - As chords, everything that begins at each moment counts, octaves and all.
 * - With `rhythm`, the times between the moments are the same, exactly.
 *
 * Passages may overlap. With `itsOwn` the index is that of the text the
 * pattern was taken from, and that very passage is left out.
 * Error: too little to look for, a sentence.
 */
export function findBySound(
  pattern: SoundPattern,
  index: SoundIndex,
  wish: SoundWish,
  itsOwn = false,
): readonly FoundPassage[] | ServiceError {
  const trouble = tooLittle(pattern, wish);
  if (trouble !== undefined) return { error: trouble };
  const found = index.tracks.flatMap((track) =>
    wish.by === 'chords' ? findChords(pattern, track, wish) : findTune(pattern, track, wish),
  );
  return itsOwn ? found.filter((one) => !isPatternItself(pattern, one, wish)) : found;
}

function tooLittle({ moments, onsets }: SoundPattern, { by, rhythm }: SoundWish): string | undefined {
  if (rhythm === true && onsets === undefined)
    return 'Notes that are typed have no rhythm; look for them without it, or select notes of a tab.';
  const most = Math.max(0, ...moments.map((notes) => unisonsOnce(notes).length));
  if (by === 'chords' && moments.length < 2 && most < 2)
    return 'One note alone is everywhere; select two or more.';
  if (by !== 'chords' && moments.length < 2)
    return 'A tune is two notes or more, one after the other; select more, or look for the chord.';
  return undefined;
}

function findTune(pattern: SoundPattern, track: SoundTrack, { rhythm, over }: SoundWish): FoundPassage[] {
  const tune = pattern.moments.map((notes) => notes.at(-1) ?? NaN);
  const tops = topsOf(track);
  const found: FoundPassage[] = [];
  for (let first = 0; first < tops.length; first++) {
    const halfSteps = Math.round((tops[first] ?? NaN) - (tune[0] ?? NaN));
    const moments = follow(tune, tops, first, halfSteps, over === true);
    if (moments === undefined) continue;
    if (rhythm === true && !sameRhythm(pattern, track, moments)) continue;
    const notes = moments.map((moment) => (track.firstNote[moment + 1] ?? 0) - 1);
    found.push(passage(track, moments, notes, halfSteps));
  }
  return found;
}

/** The moments at which the tune's notes begin, from a first one on; undefined where it goes another way. */
function follow(
  tune: readonly number[],
  tops: Float64Array,
  first: number,
  halfSteps: number,
  over: boolean,
): readonly number[] | undefined {
  const moments: number[] = [];
  let at = first;
  for (let i = 0; i < tune.length; i++) {
    const wanted = (tune[i] ?? NaN) + halfSteps;
    if (i > 0 && over) {
      const floor = Math.min(wanted, (tune[i - 1] ?? NaN) + halfSteps) - OFF;
      while (at < tops.length && (tops[at] ?? NaN) < floor) at++;
    }
    const top = tops[at];
    if (top === undefined || !(Math.abs(top - wanted) < OFF)) return undefined;
    moments.push(at++);
  }
  return moments;
}

const TOPS = new WeakMap<SoundTrack, Float64Array>();

/** The highest note that begins at each moment. */
function topsOf(track: SoundTrack): Float64Array {
  let tops = TOPS.get(track);
  if (!tops) {
    const { firstNote, midi } = track;
    tops = Float64Array.from(
      { length: firstNote.length - 1 },
      (_, i) => midi[(firstNote[i + 1] ?? 0) - 1] ?? NaN,
    );
    TOPS.set(track, tops);
  }
  return tops;
}

function findChords(pattern: SoundPattern, track: SoundTrack, { rhythm }: SoundWish): FoundPassage[] {
  const wanted = pattern.moments.map(unisonsOnce);
  const { firstNote, midi } = track;
  const at = (moment: number): readonly number[] =>
    unisonsOnce([...midi.subarray(firstNote[moment] ?? 0, firstNote[moment + 1] ?? 0)]);
  const found: FoundPassage[] = [];
  for (let first = 0; first + wanted.length < firstNote.length; first++) {
    const halfSteps = Math.round((midi[firstNote[first] ?? 0] ?? NaN) - (wanted[0]?.[0] ?? NaN));
    if (!wanted.every((notes, i) => sameChord(notes, at(first + i), halfSteps))) continue;
    const moments = wanted.map((_, i) => first + i);
    if (rhythm === true && !sameRhythm(pattern, track, moments)) continue;
    const end = firstNote[first + wanted.length] ?? 0;
    const start = firstNote[first] ?? 0;
    const notes = Array.from({ length: end - start }, (_, i) => start + i);
    found.push(passage(track, moments, notes, halfSteps));
  }
  return found;
}

function sameChord(notes: readonly number[], others: readonly number[], halfSteps: number): boolean {
  return (
    notes.length === others.length &&
    notes.every((note, i) => Math.abs((others[i] ?? NaN) - note - halfSteps) < OFF)
  );
}

/** Two strings on one pitch are one note of a chord. */
function unisonsOnce(notes: readonly number[]): readonly number[] {
  return notes.filter((note, i) => i === 0 || note - (notes[i - 1] ?? NaN) >= OFF);
}

/** Whether the times from the first moment are those of the pattern: a/b − c/d = n/e, without fractions. */
function sameRhythm(
  { onsets }: SoundPattern,
  { onsetN, onsetD }: SoundTrack,
  moments: readonly number[],
): boolean {
  const first = moments[0] ?? 0;
  const [n0, d0] = [onsetN[first] ?? 0, onsetD[first] ?? 1];
  return moments.every((moment, i) => {
    const [n, d] = [onsetN[moment] ?? 0, onsetD[moment] ?? 1];
    const wanted = onsets?.[i];
    return wanted !== undefined && (n * d0 - n0 * d) * wanted.d === wanted.n * d * d0;
  });
}

function passage(
  track: SoundTrack,
  moments: readonly number[],
  notes: readonly number[],
  halfSteps: number,
): FoundPassage {
  const first = moments[0] ?? 0;
  const last = moments.at(-1) ?? first;
  const place = track.places[track.place[first] ?? 0];
  const found = {
    part: track.part,
    section: place?.section ?? null,
    firstBar: track.bar[first] ?? 0,
    lastBar: track.bar[last] ?? 0,
    tuning: place?.tuning ?? '',
    halfSteps,
  };
  const ranges = notes.map((note) => {
    const line = track.line[note] ?? 0;
    return {
      start: { line, character: track.start[note] ?? 0 },
      end: { line, character: track.end[note] ?? 0 },
    };
  });
  return { ...found, ranges, words: foundWords(found) };
}

/** Whether a passage is the very one that the pattern was taken from. */
function isPatternItself(
  { places }: SoundPattern,
  { ranges, halfSteps }: FoundPassage,
  { by }: SoundWish,
): boolean {
  const own = places.flatMap((notes) => (by === 'chords' ? notes : notes.slice(-1)));
  const [first, last] = [own[0], own.at(-1)];
  const same = (a: typeof first, b: typeof first): boolean =>
    a?.start.line === b?.start.line && a?.start.character === b?.start.character;
  return first !== undefined && halfSteps === 0 && same(first, ranges[0]) && same(last, ranges.at(-1));
}
