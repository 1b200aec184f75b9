import { formatTuning, formatTuningNotes } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import { readTuning } from '../../instrument/tuningValue';
import { formatNoteName, formatPitchName } from '../../music/noteName';
import { placesThatFit, usualLabel } from '../../notation/labels';
import type { Label, StringLine } from '../../notation/parsedLine';
import { parseLine } from '../../notation/parseLine';
import type { Scene } from '../check';

/** The string lines of a system, top to bottom, with their places in it. */
export function stringLines(scene: Scene): readonly { readonly line: number; readonly item: StringLine }[] {
  return scene.system.lines.flatMap((item, line) => (item.kind === 'string' ? [{ line, item }] : []));
}

/** A new label for every string line, as the tuning in force has it. */
export function labelsOfTuning(scene: Scene): ReadonlyMap<number, string> {
  const octaves = stringLines(scene).some(({ item }) => hasOctave(item.label));
  return new Map(
    scene.reading.strings
      .filter(({ index }) => index >= 0)
      .map(({ line, index }) => [line, usualLabel(scene.header.tuning, index, octaves)]),
  );
}

export function hasOctave(label: Label): boolean {
  return label.notes.some(({ octave }) => octave !== undefined);
}

/** The notes of a tuning in one line, for messages: low string first. */
export function notesOf(tuning: Tuning): string {
  return tuning.strings.map((_, index) => usualLabel(tuning, index)).join(' ');
}

/** Labels that name strings of a tuning, top to bottom, in one way only: with octaves, else string numbers. */
export function plainLabels(tuning: Tuning, indices: readonly number[]): readonly string[] {
  const withOctaves = indices.map((index) => usualLabel(tuning, index, true));
  const labels = withOctaves.flatMap((text) => {
    const line = parseLine(`${text}|---|`);
    return line.kind === 'string' ? [line.label] : [];
  });
  if (labels.length === indices.length && placesThatFit(labels, tuning, 2).length === 1) return withOctaves;
  return indices.map((index) => String(tuning.strings.length - index));
}

/**
 * The `tuning:` value that the labels of a full system, bottom to top, spell; a string that is labelled by its number
 * keeps its note. Undefined where they spell none.
 */
export function tuningFromLabels(scene: Scene): string | undefined {
  const { tuning, instrument } = scene.header;
  const lines = [...stringLines(scene)].reverse();
  const notes = lines.map(({ item: { label } }, index) => {
    if (label.number !== undefined) return usualLabel(tuning, index, true);
    return label.notes
      .map(({ octave, ...name }) =>
        octave === undefined ? formatPitchName(name) : formatNoteName({ ...name, octave }),
      )
      .join('/');
  });
  if (notes.some((note) => note === '')) return undefined;
  const value = notes.join(' ');
  const read = readTuning(value, { instrument });
  if (!read.ok || read.value.strings.length !== lines.length) return undefined;
  if (formatTuningNotes(read.value) === formatTuningNotes(tuning)) return undefined;
  const named = formatTuning(read.value, instrument);
  return named === formatTuningNotes(read.value) ? value : named;
}
