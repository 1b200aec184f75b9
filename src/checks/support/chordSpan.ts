import { compareChord, type ChordComparison, type ChordVerdict } from '../../music/chord/compareChord';
import type { ChordContext } from '../../music/chord/nameChord';
import { playedContext, soundingContext } from '../../notation/chordContext';
import { readChordName } from '../../music/chord/readChordName';
import { writtenMask, type WrittenChord } from '../../music/chord/writtenChord';
import { compare, toNumber, type Fraction } from '../../music/fraction';
import { pitchClassOf } from '../../music/noteName';
import { capoShift } from '../../notation/headerViews';
import type { NoteReading, SystemReading } from '../../notation/reading';
import type { Scene } from '../check';

/** A written chord that does not agree with what sounds from its mark to the next. */
export interface ChordFinding {
  readonly verdict: Exclude<ChordVerdict, 'agrees'>;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly suggestion: string | undefined;
}

/** A ringing note that lasts less than this after the mark is taken for the end of what was before; quarter notes. */
const SHORT = 1;
/** So many notes make a chord of which something can be missing. */
const CHORD = 3;

const remembered = new WeakMap<Scene, readonly ChordFinding[]>();

/**
 * Compares every name of the chord rows with all that sounds from its mark to the next, ringing notes included.
 * Remembered with the scene, since four checks ask.
 */
export function chordFindings(scene: Scene): readonly ChordFinding[] {
  let findings = remembered.get(scene);
  if (!findings) remembered.set(scene, (findings = compareRows(scene)));
  return findings;
}

function compareRows(scene: Scene): readonly ChordFinding[] {
  const { reading } = scene;
  if (reading.notes.length === 0) return [];
  const before = ringingOn(scene);
  return reading.rows.flatMap(({ row, line, marks }) =>
    row !== 'chords'
      ? []
      : marks.flatMap((mark, i): ChordFinding[] => {
          const written = chordOf(mark.text);
          if (!written) return [];
          const next = marks[i + 1]?.onset ?? reading.length;
          const found = compareSpan(scene, written, soundsBetween(reading, before, mark.onset, next));
          if (found.verdict === 'agrees') return [];
          const { verdict, message, suggestion } = found;
          return [{ verdict, line, start: mark.start, end: mark.end, message, suggestion }];
        }),
  );
}

/**
 * How a name stands to all that sounds from one time of a system to another, by the rules of the checks.
 * @param from,to quarter notes from the system's start
 */
export function compareBetween(
  scene: Scene,
  written: WrittenChord,
  from: Fraction,
  to: Fraction,
): Pick<ChordComparison, 'verdict' | 'message'> {
  return compareSpan(scene, written, soundsBetween(scene.reading, ringingOn(scene), from, to));
}

const READ_NAMES = 2000;
const readNames = new Map<string, WrittenChord | undefined>();

/** A chord by its name, remembered: a song has few chords and many marks. */
function chordOf(text: string): WrittenChord | undefined {
  if (readNames.has(text)) return readNames.get(text);
  if (readNames.size >= READ_NAMES) readNames.clear();
  const read = readChordName(text);
  const chord = read.ok ? read.value : undefined;
  readNames.set(text, chord);
  return chord;
}

// ---- what sounds

interface Sound {
  readonly midis: readonly number[];
  /** Undefined for what rings from before the mark. */
  readonly onset: Fraction | undefined;
  /** Quarter notes of it within the span. */
  readonly length: number;
  readonly string: number;
}

interface Span {
  readonly sounds: readonly Sound[];
  /** Whether it sounds at the mark, or begins the span. */
  readonly atMark: readonly Sound[];
}

function soundsBetween(
  reading: SystemReading,
  before: readonly RingingOn[],
  from: Fraction,
  to: Fraction,
): Span {
  const sounds: Sound[] = [];
  const add = (note: NoteReading, onset: Fraction | undefined, ends: Fraction | undefined): void => {
    if (note.pitches.length === 0 || (ends && compare(ends, from) <= 0)) return;
    const end = ends && compare(ends, to) < 0 ? ends : to;
    const begin = onset && compare(onset, from) > 0 ? onset : from;
    sounds.push({
      midis: note.pitches.map(({ midi }) => midi),
      onset: onset && compare(onset, from) >= 0 ? onset : undefined,
      length: toNumber(end) - toNumber(begin),
      string: note.string,
    });
  };
  for (const { note, ends } of before) add(note, undefined, ends);
  // Notes stand in time order.
  for (const note of reading.notes) {
    if (compare(note.onset, to) >= 0) break;
    add(note, note.onset, note.ends);
  }
  sounds.sort((a, b) => b.string - a.string);
  const first = sounds.reduce<Fraction | undefined>(
    (least, { onset }) => (onset && (!least || compare(onset, least) < 0) ? onset : least),
    undefined,
  );
  const atMark = sounds.filter(({ onset }) => !onset || (first && compare(onset, first) === 0));
  return { sounds, atMark };
}

/** A note that rings into the system, and when something on its string ends it. */
interface RingingOn {
  readonly note: NoteReading;
  readonly ends: Fraction | undefined;
}

function ringingOn(scene: Scene): readonly RingingOn[] {
  const { notes, stops } = scene.reading;
  return scene.ringing.map(({ note }) => {
    const ofString = ({ string }: { readonly string: number }): boolean => string === note.string;
    const struck = notes.find(ofString)?.onset;
    const stopped = stops.find(ofString)?.onset;
    const byStop = stopped && (!struck || compare(stopped, struck) < 0);
    return { note, ends: byStop ? stopped : struck };
  });
}

// ---- how the name stands to it

type Compared = Pick<ChordComparison, 'verdict' | 'message'> & { readonly suggestion: string | undefined };

const AGREES: Compared = { verdict: 'agrees', message: '', suggestion: undefined };

/** Under a full capo the name as played is meant, and the sounding name is right too. */
function compareSpan(scene: Scene, written: WrittenChord, span: Span): Compared {
  const shift = capoShift(scene.header);
  const played = playedContext(scene.header);
  const sounding = soundingContext(scene.header);
  const asPlayed = compareAt(written, span, shift, played);
  if (shift === 0 || asPlayed.verdict === 'agrees') return asPlayed;
  if (compareAt(written, span, 0, sounding).verdict === 'agrees') return AGREES;
  const message = `${asPlayed.message.replace(/\.$/, '')} (names as played with the capo at fret ${shift}).`;
  return { ...asPlayed, message };
}

function compareAt(written: WrittenChord, span: Span, shift: number, context: ChordContext): Compared {
  const { sounds, atMark } = span;
  if (sounds.length === 0) return AGREES;
  if (!written.root) {
    // What still rings into silence is no chord of its own.
    const struck = sounds.filter(({ onset }) => onset);
    return struck.length === 0 ? AGREES : verdictOf(written, struck, shift, context);
  }
  const full = verdictOf(written, sounds, shift, context);
  if (full.verdict === 'agrees') return full;
  const struckTogether = countTogether(sounds);
  const kept = sounds.filter((sound) => belongs(sound, written, sounds, shift));
  const rootSounds = hasPitchClass(sounds, shift, pitchClassOf(written.root));
  switch (full.verdict) {
    case 'disagrees': {
      // A melody over a chord that no one plays says little, unless it has the root.
      if (struckTogether < 2 && !rootSounds && ringTogether(sounds) < CHORD) return AGREES;
      // What only rings on from the chord before is no contradiction, but it blurs.
      const fresh = sounds.filter((sound) => sound.onset ?? claimed(sound, written, shift));
      const own = verdictOf(written, fresh, shift, context);
      return own.verdict === 'disagrees' ? own : withoutMelody(written, kept, shift, context);
    }
    case 'adds':
      return withoutMelody(written, kept, shift, context);
    case 'omits':
      return struckTogether >= 2 && rootSounds ? full : AGREES;
    case 'bass': {
      const low = verdictOf(written, atMark, shift, context);
      return low.verdict === 'bass' && struckTogether >= 2 ? full : AGREES;
    }
  }
}

/** A verdict on what is left without melody notes and short ends of what was before. */
function withoutMelody(
  written: WrittenChord,
  kept: readonly Sound[],
  shift: number,
  context: ChordContext,
): Compared {
  const own = verdictOf(written, kept, shift, context);
  return own.verdict === 'adds' || own.verdict === 'disagrees' ? { ...own, verdict: 'adds' } : AGREES;
}

function verdictOf(
  written: WrittenChord,
  sounds: readonly Sound[],
  shift: number,
  context: ChordContext,
): Compared {
  const { verdict, message, suggestion } = compareChord(
    written,
    sounds.flatMap(({ midis }) => midis.map((midi) => midi - shift)),
    context,
  );
  return { verdict, message, suggestion };
}

/** Whether a sound counts for what the chord has: all its own tones, and others that are neither melody nor a short rest of before. */
function belongs(sound: Sound, written: WrittenChord, sounds: readonly Sound[], shift: number): boolean {
  if (claimed(sound, written, shift)) return true;
  if (!sound.onset) return sound.length >= SHORT;
  const together = sounds.filter(({ onset }) => onset && sound.onset && compare(onset, sound.onset) === 0);
  return together.length >= CHORD;
}

function claimed(sound: Sound, written: WrittenChord, shift: number): boolean {
  const { root, bass } = written;
  if (!root) return false;
  const mask = writtenMask(written);
  return sound.midis.every((midi) => {
    const pitchClass = (((Math.round(midi) - shift) % 12) + 12) % 12;
    if (bass && pitchClassOf(bass) === pitchClass) return true;
    return (mask & (1 << ((pitchClass - pitchClassOf(root) + 12) % 12))) !== 0;
  });
}

function hasPitchClass(sounds: readonly Sound[], shift: number, pitchClass: number): boolean {
  return sounds.some(({ midis }) =>
    midis.some((midi) => (((Math.round(midi) - shift) % 12) + 12) % 12 === pitchClass),
  );
}

/** The most notes that begin at one time. */
function countTogether(sounds: readonly Sound[]): number {
  const counts = new Map<number, number>();
  for (const { onset } of sounds) {
    if (onset) counts.set(toNumber(onset), (counts.get(toNumber(onset)) ?? 0) + 1);
  }
  return Math.max(0, ...counts.values());
}

/** How many strings sound in the span, since notes ring on. */
function ringTogether(sounds: readonly Sound[]): number {
  return new Set(sounds.map(({ string }) => string)).size;
}
