import { formatFraction, subtract, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';

/** A bar of one version with its notes. */
export interface VersionBar {
  readonly system: System;
  /** Index in the system's bars. */
  readonly index: number;
  /** As people count it. */
  readonly number: number;
  /** The same for two bars with the same notes at the same places and times. */
  readonly key: string;
  readonly notes: readonly VersionNote[];
}

/** A note with what it is compared by. */
export interface VersionNote {
  readonly system: System;
  readonly note: NoteReading;
  /** The bar's number as people count. */
  readonly bar: number;
  /** Quarter notes from the bar's start. */
  readonly time: Fraction;
  /** The same as text, to compare by. */
  readonly onset: string;
  /** What sounds, to a cent; a muted stroke sounds like one on the same string only. */
  readonly pitch: string;
  /** Where and how it is stopped. */
  readonly stop: string;
  /** How it is played there. */
  readonly played: string;
}

/** The bars of each part, in the order of the text. */
export function barsByPart(document: TabDocument): ReadonlyMap<string | undefined, readonly VersionBar[]> {
  const parts = new Map<string | undefined, VersionBar[]>(document.parts.map((part) => [part, []]));
  for (const system of document.systems) {
    const { part, firstBar } = document.placeOf(system);
    const bars = parts.get(part) ?? [];
    parts.set(part, bars);
    const notes = notesByBar(system, firstBar);
    const tuning = system.header.tuning.strings.length;
    system.reading.bars.forEach((bar, index) => {
      const own = notes[index] ?? [];
      const key = `${tuning};${formatFraction(bar.length)};${own.map(keyOf).join(' ')}`;
      bars.push({ system, index, number: firstBar + index, key, notes: own });
    });
  }
  return parts;
}

function notesByBar(system: System, firstBar: number): VersionNote[][] {
  const bars: VersionNote[][] = system.reading.bars.map(() => []);
  for (const note of system.reading.notes) {
    const start = system.reading.bars[note.bar]?.onset;
    if (!start) continue;
    const time = subtract(note.onset, start);
    bars[note.bar]?.push({
      system,
      note,
      bar: firstBar + note.bar,
      time,
      onset: formatFraction(time),
      pitch: pitchOf(note),
      stop: `${note.string}:${note.kind}:${note.fret ?? ''}:${note.touched ?? ''}`,
      played: playedOf(note),
    });
  }
  return bars;
}

function keyOf({ onset, pitch, stop, played }: VersionNote): string {
  return `${onset},${pitch},${stop},${played}`;
}

/** Cents as a whole number, so that the dust of binary fractions sets nothing apart. */
function pitchOf({ pitches, string }: NoteReading): string {
  return pitches.length === 0 ? `x${string}` : pitches.map(({ midi }) => Math.round(midi * 100)).join('/');
}

/** A slide of three strokes is a slide; where it ends counts. */
function playedOf({ ghost, techniques, joinedFrom }: NoteReading): string {
  const signs = techniques.map(({ kind, to }) => `${kind}${to === undefined ? '' : Math.round(to * 100)}`);
  return [ghost ? 'ghost' : '', joinedFrom === undefined ? '' : 'joined', ...signs.sort()].join('+');
}
