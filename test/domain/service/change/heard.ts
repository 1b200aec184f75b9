import { add } from '../../../../src/music/fraction';
import { formatKey } from '../../../../src/music/key';
import { formatCapo } from '../../../../src/instrument/capo';
import { formatTuningNotes } from '../../../../src/instrument/tuningFormat';
import type { Header } from '../../../../src/notation/header';
import type { Document } from '../../../../src/notation/document';
import type { System } from '../../../../src/notation/tabDocument';
import type { Slice } from '../../../../src/service/change/slices';

/** A note as it is heard, and where it is written. */
export interface Heard {
  readonly part: string | undefined;
  readonly bar: number;
  readonly name: string;
  /** Sounding, of the first string of a course; undefined for `x`. */
  readonly midi: number | undefined;
  /** Part, exact time, pitches, kind and techniques with the pitches that they go to: all that a listener gets. */
  readonly sound: string;
  /** String and fret. */
  readonly place: string;
  /** In the passage. */
  readonly inside: boolean;
}

/** Every note of a document. */
export function heard(document: Document, slices: readonly Slice[], halfSteps = 0): Heard[] {
  return document.systems.flatMap((system) => {
    const { part, firstBar, onset } = document.placeOf(system);
    const slice = slices.find((one) => one.system === system);
    return system.reading.notes.map((note): Heard => {
      const inside = slice !== undefined && note.bar >= slice.firstBar && note.bar <= slice.lastBar;
      const at = add(onset, note.onset);
      const up = (midi: number): string => (midi + (inside ? halfSteps : 0)).toFixed(2);
      const techniques = note.techniques.map(({ kind, to, toFret }) =>
        kind === 'bend' || kind === 'pre-bend' || kind === 'release' || kind === 'trill' || kind === 'slide'
          ? `${kind} ${to === undefined ? '' : up(to)}`
          : `${kind} ${toFret ?? ''}`,
      );
      return {
        part,
        bar: firstBar + note.bar,
        name: note.pitches.length === 0 ? 'x' : '',
        midi: note.pitches[0]?.midi,
        sound: [
          part ?? '',
          `${at.n}/${at.d}`,
          note.pitches.map(({ midi }) => up(midi)).join('+'),
          note.kind,
          note.ghost ? 'ghost' : '',
          techniques.join(','),
        ].join(' '),
        place: `${note.string}:${note.fret ?? 'x'}:${note.touched ?? ''}`,
        inside,
      };
    });
  });
}

/** What is in the first list and not in the second, each as often as it is there more. */
export function missing(these: readonly string[], those: readonly string[]): string[] {
  const count = new Map<string, number>();
  for (const one of those) count.set(one, (count.get(one) ?? 0) + 1);
  return these.filter((one) => {
    const left = count.get(one) ?? 0;
    count.set(one, left - 1);
    return left <= 0;
  });
}

/** The fields that a change may touch, as text. */
export function fields({ tuning, capo, key, ...rest }: Header): string {
  return [
    formatTuningNotes(tuning),
    formatCapo(capo),
    key ? formatKey(key) : '',
    rest.instrument.name,
    rest.frets,
    rest.meter.upper,
    rest.meter.lower,
    rest.part,
    rest.title,
  ].join(' | ');
}

/** What is the matter with a document: every problem, told by its kind. */
export function problems(document: Document): string[] {
  return [
    ...document.systems.flatMap(({ reading }) => reading.problems.map(({ kind }) => kind)),
    ...document.fieldGroups.flatMap((group) => group.problems.map(({ kind, reason }) => `${kind} ${reason}`)),
  ];
}

/** The text of a system. */
export function textOf(system: System): string {
  return system.lines.map(({ text }) => text).join('\n');
}
