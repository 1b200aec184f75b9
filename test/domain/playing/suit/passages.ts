import type { PassageNote } from '../../../../src/playing/passage';
import { note } from '../boards';

/** Whole numbers below `below`, the same for the same seed. */
export function randomFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const SCALE = [0, 2, 4, 5, 7, 9, 11];

/**
 * A little passage of our own: a tune by step in some key, with a bass that rings under it, now and then a chord, a
 * hammer-on, a harmonic, a muted stroke or a bend.
 */
export function littlePassage(seed: number): PassageNote[] {
  const random = randomFrom(seed * 7919 + 1);
  const tonic = random(12);
  const pitch = (degree: number): number =>
    48 + tonic - 12 + 12 * Math.floor(degree / 7) + (SCALE[degree % 7] ?? 0);
  const notes: PassageNote[] = [];
  let degree = 9 + random(5);
  const onsets = 3 + random(3);
  let before: PassageNote | undefined;
  for (let at = 0; at < onsets; at++) {
    const onset = at / 2;
    const kind = random(8);
    degree = Math.max(4, Math.min(19, degree + random(7) - 3));
    const id = notes.length;
    const rises = before?.midi !== undefined && before.midi < pitch(degree);
    const tune = note(id, pitch(degree), onset, {
      end: onset + 0.5,
      string: 1 + random(3),
      ...(kind === 1 && before && rises ? { joinedTo: before.id } : {}),
      ...(kind === 2 ? { need: 'stopped' as const, reaches: [pitch(degree) + 2] } : {}),
    });
    notes.push(tune);
    before = tune;
    if (at % 2 === 0 && kind !== 5) {
      const bass = pitch(Math.max(0, degree - 7 - random(5)));
      if (bass < (tune.midi ?? 0)) notes.push(note(notes.length, bass, onset, { end: onset + 1, string: 5 }));
    }
    if (kind === 3) notes.push(note(notes.length, pitch(degree) - 5, onset, { end: onset + 0.5, string: 3 }));
    if (kind === 4) notes.push(note(notes.length, undefined, onset, { end: onset + 0.25, string: 4 }));
  }
  return notes;
}

/**
 * Sixteen bars in G of two voices, written for this: a tune in eighths and quarters over a bass in halves held under it.
 * Degrees of the scale, counted from B2 for the tune and from G2 for the bass.
 */
export function sixteenBars(halfSteps = 0): PassageNote[] {
  const bars: readonly (readonly [tune: string, bass: string])[] = [
    ['7 . 9 . 11 10 9 .', '0 4'],
    ['8 . 7 8 9 . 6 .', '3 4'],
    ['7 9 11 12 13 . 11 .', '0 2'],
    ['12 11 10 9 8 . . .', '4 1'],
    ['7 . 9 . 11 10 9 .', '0 4'],
    ['10 . 9 8 9 . 7 .', '5 3'],
    ['8 9 8 6 7 . 5 .', '3 4'],
    ['7 . . . 4 5 6 .', '0 4'],
    ['9 . 11 . 12 11 9 .', '2 5'],
    ['10 . 12 . 13 12 10 .', '3 0'],
    ['9 10 11 9 8 . 9 .', '5 1'],
    ['8 7 6 5 4 . 6 .', '4 4'],
    ['7 . 9 11 14 . 13 .', '0 5'],
    ['12 13 12 10 11 . 9 .', '3 0'],
    ['10 9 8 7 6 . 8 .', '1 4'],
    ['7 . 9 . 7 . . .', '0 0'],
  ];
  const pitch = (degree: number): number =>
    12 * Math.floor(degree / 7) + (SCALE[degree % 7] ?? 0) + halfSteps;
  const notes: PassageNote[] = [];
  bars.forEach(([tune, bass], bar) => {
    const steps = tune.split(' ');
    steps.forEach((step, at) => {
      if (step === '.') return;
      let length = 1;
      while (steps[at + length] === '.') length++;
      const onset = bar * 4 + at / 2;
      notes.push(note(notes.length, 43 + pitch(Number(step) + 2), onset, { end: onset + length / 2 }));
    });
    bass.split(' ').forEach((step, half) => {
      const onset = bar * 4 + half * 2;
      notes.push(note(notes.length, 43 + pitch(Number(step)), onset, { end: onset + 2, string: 6 }));
    });
  });
  return notes;
}
