import { compareBetween } from '../../checks/support/chordSpan';
import type { Scene } from '../../checks/check';
import type { ChordVerdict } from '../../music/chord/compareChord';
import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { compare, type Fraction } from '../../music/fraction';
import { playedContext } from '../../notation/chordContext';
import { capoShift } from '../../notation/headerViews';
import type { System, TabDocument } from '../../notation/tabDocument';
import { midisBetween, soundingAt } from '../sounding';

/** What sounds in a system, ready to be named as its hovers name it: as played under a full capo. */
export interface Ear {
  readonly document: TabDocument;
  readonly system: System;
  readonly scene: Scene;
}

/** A name for a span, and how unlikely a player says it. */
export interface SpanName {
  readonly name: string;
  readonly cost: number;
}

export function earFor(document: TabDocument, system: System): Ear {
  const { reading, header } = system;
  const scene = { system, reading, header, ringing: document.ringingInto(system), reach: Infinity };
  return { document, system, scene };
}

/** Fewer notes that sound at once are no chord that a name could be taken from. */
const CHORD = 3;
/** Chords struck within a span that are asked for their names. */
const MOST_STRIKES = 6;
/** A power chord says less than a chord of the same cost. */
const POWER = 1;

/**
 * The likeliest name that agrees with all that sounds from one time to another: that of all of it together, of what
 * sounds as it begins, or of a chord that is struck in it, so that a tune over the chord does not count.
 */
export function nameBetween(ear: Ear, from: Fraction, to: Fraction): SpanName | undefined {
  const { document, system } = ear;
  const struck = new Map<string, Fraction>();
  for (const { onset } of system.reading.notes)
    if (compare(onset, from) >= 0 && compare(onset, to) < 0) struck.set(`${onset.n}/${onset.d}`, onset);
  const moments = [from, ...struck.values()].map((time) =>
    soundingAt(document, system, time).flatMap(({ midis }) => midis),
  );
  const chords = moments.filter((midis) => midis.length >= CHORD).slice(0, MOST_STRIKES);
  let best: SpanName | undefined;
  for (const midis of [midisBetween(document, system, from, to), ...chords]) {
    const named = nameOf(ear, midis);
    if (!named || (best && best.cost <= named.cost)) continue;
    if (verdictBetween(ear, named.name, from, to) === 'agrees') best = named;
  }
  return best;
}

function nameOf({ system: { header } }: Ear, midis: readonly number[]): SpanName | undefined {
  const shift = capoShift(header);
  const { kind, names } = nameChord(
    midis.map((midi) => midi - shift),
    playedContext(header),
  );
  const [first] = names;
  if (!first || (kind !== 'chord' && kind !== 'power') || first.name.endsWith('(no root)')) return undefined;
  return { name: first.name, cost: first.cost + (kind === 'power' ? POWER : 0) };
}

/** How a name stands to what sounds; undefined for a name that cannot be read. */
export function verdictBetween(
  { scene }: Ear,
  name: string,
  from: Fraction,
  to: Fraction,
): ChordVerdict | undefined {
  const written = writtenOf(name);
  return written && compareBetween(scene, written, from, to).verdict;
}

function writtenOf(name: string): WrittenChord | undefined {
  const read = readChordName(name);
  return read.ok ? read.value : undefined;
}

/** Whether a pitch sounds at some time from one moment to another. */
export function soundsBetween({ document, system }: Ear, from: Fraction, to: Fraction): boolean {
  return midisBetween(document, system, from, to).length > 0;
}
