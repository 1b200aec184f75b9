import type { Tuning, TuningString } from '../instrument/tuning';
import { formatNoteName, formatPitchName, pitchClassOf } from '../music/noteName';
import type { Label, LabelNote, StringLine } from './parsedLine';

/*
 * Order decides, labels check: lines are counted from the bottom, and a label never moves a line. Only where a system
 * leaves strings out do labels say which ones stand there.
 */

/** Which string each line of a system is; lines top to bottom, indices into `tuning.strings` (low string first). */
export interface StringPlaces {
  readonly indices: readonly number[];
  /** How that was found. */
  readonly by: 'order' | 'labels' | 'guess';
}

/** The strings that the lines of a system stand for. */
export function placeStrings(lines: readonly StringLine[], tuning: Tuning): StringPlaces {
  const count = tuning.strings.length;
  const byOrder = lines.map((_, i) => lines.length - 1 - i);
  if (lines.length === count) return { indices: byOrder, by: 'order' };
  if (lines.length > count) return { indices: byOrder.map((i) => (i < count ? i : -1)), by: 'guess' };
  const fits = placesThatFit(
    lines.map((line) => line.label),
    tuning,
    2,
  );
  const [first] = fits;
  if (first && fits.length === 1) return { indices: first, by: 'labels' };
  return { indices: first ?? byOrder, by: 'guess' };
}

/**
 * The ways in which labels, top to bottom, name strings in order; at most `most` of them, as indices into
 * `tuning.strings`.
 */
export function placesThatFit(labels: readonly Label[], tuning: Tuning, most: number): number[][] {
  const found: number[][] = [];
  const place = (from: number, chosen: readonly number[]): void => {
    if (found.length >= most) return;
    const label = labels[chosen.length];
    if (!label) {
      found.push([...chosen]);
      return;
    }
    const left = labels.length - chosen.length - 1;
    for (let index = from; index >= left; index--) {
      if (labelAgrees(label, tuning, index)) place(index - 1, [...chosen, index]);
    }
  };
  place(tuning.strings.length - 1, []);
  return found;
}

/**
 * Whether a label names the string at `index` of a tuning: by its note with or without octave, by one note of a
 * course, or by its number.
 */
export function labelAgrees(label: Label, tuning: Tuning, index: number): boolean {
  const string = tuning.strings[index];
  if (!string) return false;
  if (label.number !== undefined) return label.number === tuning.strings.length - index;
  return label.notes.length > 0 && label.notes.every((note) => namesPitchOf(note, string));
}

function namesPitchOf(note: LabelNote, string: TuningString): boolean {
  return string.pitches.some(({ midi }) => {
    const key = Math.round(midi);
    const sameClass = ((key % 12) + 12) % 12 === pitchClassOf(note);
    // The octave of the sounding pitch: B#3 sounds in octave 4, so it is counted from the number.
    return sameClass && (note.octave === undefined || note.octave === octaveOf(note, key));
  });
}

/** The octave that a note name has at a MIDI number: B# 60 is B#3. */
function octaveOf(note: LabelNote, midi: number): number {
  return Math.floor((midi - note.alter) / 12) - 1;
}

/** What is the matter with a full set of labels; undefined when each agrees with its string. */
export type LabelTrouble = 'usual-tuning' | 'upside-down' | 'disagree';

/**
 * Compares the labels of a full system with its tuning.
 * @returns `usual-tuning` when they are the instrument's usual labels left standing, `upside-down` when they fit from
 * bottom to top, `disagree` otherwise.
 */
export function labelTrouble(
  labels: readonly Label[],
  indices: readonly number[],
  tuning: Tuning,
  usual: Tuning,
): LabelTrouble | undefined {
  const fits = (set: Tuning, at: readonly number[]): boolean =>
    labels.every((label, i) => labelAgrees(label, set, at[i] ?? -1));
  if (fits(tuning, indices)) return undefined;
  if (usual.strings.length === tuning.strings.length && fits(usual, indices)) return 'usual-tuning';
  const reversed = [...indices].reverse();
  if (fits(tuning, reversed) || (usual.strings.length === tuning.strings.length && fits(usual, reversed)))
    return 'upside-down';
  return 'disagree';
}

/** A label as this tuning would have it: the note without its octave, in capitals. */
export function usualLabel(tuning: Tuning, index: number, withOctave = false): string {
  const pitches = tuning.strings[index]?.pitches ?? [];
  return pitches
    .map(({ name }) => (withOctave ? formatNoteName(name) : formatPitchName(name)))
    .filter((text, i, all) => all.indexOf(text) === i)
    .join('/');
}
