import { compareBetween } from '../../checks/support/chordSpan';
import type { Scene } from '../../checks/check';
import { compareChord, type ChordVerdict } from '../../music/chord/compareChord';
import { nameChord } from '../../music/chord/nameChord';
import { readChordName } from '../../music/chord/readChordName';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { compare, equal, type Fraction } from '../../music/fraction';
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
/** What it costs that a chord is struck only after its span has begun: a name stands where its chord begins. */
const LATE = 0.5;
/**
 * What it costs that a chord struck as a whole lacks tones of the name, or its root: a row says what is struck, not the
 * sum of several chords. An engineering value.
 */
const NOT_STRUCK = 4;
/** Names that cost more are no everyday names for a row: an engineering value. */
const DEAREST = 9;

/**
 * The likeliest name that agrees with all that sounds from one time to another: that of all of it together, of what
 * sounds as it begins, or of a chord that is struck in it, so that a tune over the chord does not count.
 */
export function nameBetween(ear: Ear, from: Fraction, to: Fraction): SpanName | undefined {
  const { document, system } = ear;
  const within = system.reading.notes.filter(
    ({ onset, pitches }) => pitches.length > 0 && compare(onset, from) >= 0 && compare(onset, to) < 0,
  );
  const struck = new Map(within.map(({ onset }) => [`${onset.n}/${onset.d}`, onset]));
  const first = soundingAt(document, system, from);
  const strings = new Set([...first.map(({ note }) => note), ...within].map(({ string }) => string));
  // Notes one after the other on two strings are a tune, and no chord.
  if (strings.size < CHORD && struck.size === within.length) return undefined;
  const times = [...struck.values()].filter((time) => compare(time, from) > 0).slice(0, MOST_STRIKES);
  const moments = [first, ...times.map((time) => soundingAt(document, system, time))].map((sounding) =>
    sounding.flatMap(({ midis }) => midis),
  );
  const [atStart, ...later] = moments.map((midis) =>
    midis.length >= CHORD ? nameOf(ear, midis) : undefined,
  );
  const candidates = new Map<string, SpanName>();
  for (const named of [nameOf(ear, midisBetween(document, system, from, to)), atStart])
    if (named) candidates.set(named.name, named);
  for (const named of later)
    if (named && !candidates.has(named.name))
      candidates.set(named.name, { name: named.name, cost: named.cost + LATE });
  const chords = [...struck.values()]
    .map((time) => within.filter(({ onset }) => equal(onset, time)))
    .filter((notes) => notes.length >= CHORD)
    .map((notes) => notes.flatMap(({ pitches }) => pitches.map(({ midi }) => midi)));
  return [...candidates.values()]
    .map(({ name, cost }) => ({ name, cost: cost + NOT_STRUCK * lacking(ear, name, chords) }))
    .sort((a, b) => a.cost - b.cost)
    .find(({ name }) => verdictBetween(ear, name, from, to) === 'agrees');
}

/** How many chords that are struck as a whole are not what a name says; one has to be more than one to tell. */
function lacking({ system: { header } }: Ear, name: string, chords: readonly (readonly number[])[]): number {
  const written = chords.length > 1 ? writtenOf(name) : undefined;
  if (!written) return 0;
  const shift = capoShift(header);
  const says = (midis: readonly number[]): ChordVerdict =>
    compareChord(
      written,
      midis.map((midi) => midi - shift),
      playedContext(header),
    ).verdict;
  return chords.filter((midis) => ['omits', 'disagrees'].includes(says(midis))).length;
}

function nameOf({ system: { header } }: Ear, midis: readonly number[]): SpanName | undefined {
  const shift = capoShift(header);
  const { kind, names } = nameChord(
    midis.map((midi) => midi - shift),
    playedContext(header),
  );
  const [first] = names;
  if (!first || (kind !== 'chord' && kind !== 'power') || first.name.endsWith('(no root)')) return undefined;
  return first.cost > DEAREST ? undefined : { name: first.name, cost: first.cost };
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
