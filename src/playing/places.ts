import { harmonicAt, nearestNodes } from '../music/harmonics';
import type { PassageNote, Placement, UnplacedReason } from './passage';
import type { Neck } from './neck';
import { highestMidi, stringCount, writtenStop, type Target } from './target';

/** One place where a note can be played. */
export interface Place {
  /** Index of the string, low-placed string first. */
  readonly index: number;
  readonly fret: number;
  readonly touched: number | undefined;
  /** Fret from the nut that a finger (or the bar) must stop; undefined when nothing is stopped. */
  readonly stoppedFret: number | undefined;
  /** The same in thousandths of a millimetre from the nut; 0 when nothing is stopped. */
  readonly position: number;
  /** What counts in a tie: the fret, and for a harmonic its partial, since the low ones ring out and are easy to hit. */
  readonly tie: number;
}

/** All places of a note, lowest fret first, or why there is none. */
export type Places =
  | { readonly places: readonly Place[]; readonly why: undefined }
  | { readonly places: readonly []; readonly why: Why };

export interface Why {
  readonly reason: UnplacedReason;
  readonly detail: string;
}

/** Two pitches within a cent are the same to a player of frets. */
const CENT = 0.01 + 1e-9;
/** Beyond 7/8 of the string (fret 36) the bridge is too near to touch a node; also the last fret that tab writes. */
const LAST_TOUCH = 36;

/** Every node up to the eighth partial, as written and in half steps above the stopped string. */
const NODES = nearestNodes(0, 100).flatMap(({ fret }) => {
  const harmonic = harmonicAt(fret);
  return harmonic?.kind === 'harmonic'
    ? [{ fret, semitones: harmonic.semitones, partial: Math.round(2 ** (harmonic.semitones / 12)) }]
    : [];
});

/** Finds where a note can be played by itself. */
export function placesOf(note: PassageNote, target: Target, neck: Neck): Places {
  const found = find(note, target, neck);
  if ('reason' in found) return { places: [], why: found };
  return { places: found.sort(byFret), why: undefined };
}

function find(note: PassageNote, target: Target, neck: Neck): Place[] | Why {
  if (note.midi === undefined) return strokePlaces(note, target);
  if (note.need === 'natural-harmonic') return naturalPlaces(note.midi, target);
  if (note.need === 'artificial-harmonic') return artificialPlaces(note.midi, target, neck);
  return frettedPlaces(note, note.midi, target, neck);
}

function byFret(a: Place, b: Place): number {
  return a.tie - b.tie || (a.touched ?? 0) - (b.touched ?? 0) || a.index - b.index;
}

function strokePlaces(note: PassageNote, target: Target): Place[] | Why {
  const own = stringCount(target) - note.string;
  const all = strings(target);
  const kept = all.includes(own) ? [own] : all;
  return kept.length > 0 ? kept.map((index) => open(index, undefined)) : NO_STRINGS;
}

function frettedPlaces(note: PassageNote, midi: number, target: Target, neck: Neck): Place[] | Why {
  const board = target.fingerboard;
  const all: Place[] = [];
  for (const index of strings(target)) {
    const fret = board.fretFor(index, midi);
    // The board answers with the nearest fret; a kept note keeps its pitch.
    if (fret === undefined || Math.abs((board.pitches(index, fret)?.[0] ?? NaN) - midi) > CENT) continue;
    all.push(fret === 0 ? open(index, undefined) : stopped(index, fret, undefined, target, neck));
  }
  if (all.length === 0) return whyNoFret(midi, target);
  const closed = note.need === 'stopped' ? all.filter((place) => place.stoppedFret !== undefined) : all;
  if (closed.length === 0) {
    const detail = 'Only an open string sounds it there, and its technique needs a stopped one.';
    return { reason: 'technique cannot be kept', detail };
  }
  const able = closed.filter(({ index }) => note.reaches.every((pitch) => within(index, pitch, target)));
  if (able.length > 0) return able;
  const reached = note.reaches.map(tidy).join(', ');
  const detail = `No string that sounds it also reaches the pitch that its technique goes to (MIDI ${reached}).`;
  return { reason: 'technique cannot be kept', detail };
}

function naturalPlaces(midi: number, target: Target): Place[] | Why {
  const all = strings(target).flatMap((index) =>
    NODES.filter((node) => Math.abs(target.fingerboard.openMidi(index) + node.semitones - midi) <= CENT).map(
      (node) => open(index, sum(writtenStop(target, index), node.fret), node.partial),
    ),
  );
  if (all.length > 0) return all;
  const detail = `No string has a node up to its eighth partial that sounds MIDI ${tidy(midi)} within a cent.`;
  return { reason: 'no such harmonic', detail };
}

function artificialPlaces(midi: number, target: Target, neck: Neck): Place[] | Why {
  const board = target.fingerboard;
  const all: Place[] = [];
  for (const index of strings(target)) {
    for (const node of NODES) {
      const fret = board.fretFor(index, midi - node.semitones);
      if (fret === undefined || fret === 0) continue;
      const stop = board.pitches(index, fret)?.[0] ?? NaN;
      if (Math.abs(stop + node.semitones - midi) > CENT) continue;
      if (board.absoluteFret(index, fret) + node.fret > LAST_TOUCH) continue;
      all.push({ ...stopped(index, fret, sum(fret, node.fret), target, neck), tie: fret + node.partial });
    }
  }
  if (all.length > 0) return all;
  const detail = `No stopped string has a node that sounds MIDI ${tidy(midi)} within a cent.`;
  return { reason: 'no such harmonic', detail };
}

const NO_STRINGS: Why = { reason: 'below the lowest string', detail: 'The tuning has no strings.' };

function whyNoFret(midi: number, target: Target): Why {
  const all = strings(target);
  if (all.length === 0) return NO_STRINGS;
  const lowest = Math.min(...all.map((index) => target.fingerboard.openMidi(index)));
  if (midi < lowest - CENT) {
    const detail = `It lies ${steps(lowest - midi)} below the lowest open string.`;
    return { reason: 'below the lowest string', detail };
  }
  const past = all
    .filter((index) => target.fingerboard.openMidi(index) <= midi + CENT)
    .map((index) => ({ string: all.length - index, by: midi - highestMidi(target, index) }));
  const nearest = past.reduce((a, b) => (b.by < a.by ? b : a));
  const detail =
    nearest.by > CENT
      ? `It lies ${steps(nearest.by)} past the last fret of string ${nearest.string}, the nearest.`
      : `MIDI ${tidy(midi)} lies between two frets of every string that could reach it.`;
  return { reason: 'past the last fret', detail };
}

function within(index: number, midi: number, target: Target): boolean {
  return midi >= target.fingerboard.openMidi(index) - CENT && midi <= highestMidi(target, index) + CENT;
}

function open(index: number, touched: number | undefined, tie = 0): Place {
  return { index, fret: 0, touched, stoppedFret: undefined, position: 0, tie };
}

function stopped(
  index: number,
  fret: number,
  touched: number | undefined,
  target: Target,
  neck: Neck,
): Place {
  const stoppedFret = target.fingerboard.absoluteFret(index, fret);
  return { index, fret, touched, stoppedFret, position: neck.position(stoppedFret), tie: fret };
}

/** Indices of the strings, low-placed string first. */
function strings(target: Target): number[] {
  return Array.from({ length: stringCount(target) }, (_, index) => index);
}

/** A written place keeps one decimal: 5 + 3.2 is 8.2. */
function sum(fret: number, node: number): number {
  return Math.round((fret + node) * 10) / 10;
}

function tidy(value: number): number {
  return Math.round(value * 100) / 100;
}

function steps(value: number): string {
  const amount = tidy(value);
  return amount === 1 ? 'a half step' : `${amount} half steps`;
}

/** Of some places the one that is given beforehand; a note without a given place, or with another, has none. */
export function onlyAt(places: readonly Place[], fixed: Placement | undefined, strings: number): Places {
  const kept = places.filter(
    (place) =>
      strings - place.index === fixed?.string && place.fret === fixed.fret && place.touched === fixed.touched,
  );
  if (kept.length > 0) return { places: kept, why: undefined };
  const detail = 'The given place does not sound it.';
  return { places: [], why: { reason: 'technique cannot be kept', detail } };
}
