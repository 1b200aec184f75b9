import { compare } from '../music/fraction';
import { spanBetween } from '../instrument/neck';
import { fingerboardOf } from '../notation/headerViews';
import type { NoteReading } from '../notation/reading';
import type { Check, Scene, SystemFinding } from './check';
import { onsetsOf } from './support/onsets';

export const stretchOverReach: Check = {
  code: 'stretch-over-reach',
  severity: 'warning',
  title: 'A stretch wider than the hand',
  help: {
    group: 'The hand',
    meaning:
      'The lowest and the highest fret that fingers stop at one time lie farther apart than `pegbox.reach`, measured in millimetres at that place on the neck: four frets at the nut are as wide as six near the twelfth. 130 mm is an engineering value for a wide stretch; set it to your hand. Open strings are free, and a barre is one finger.',
    mending: 'Play one of the notes on another string, or leave one out. Do not force a stretch that hurts.',
  },
  run: {
    system: (scene) => {
      if (scene.header.fretting === 'slide') return [];
      const joined = scene.reading.notes.filter(isJoinedByFinger);
      return onsetsOf(scene.reading).flatMap((column) =>
        column.length < 2 ? [] : (findingFor(scene, column, joined) ?? []),
      );
    },
  },
  examples: {
    raises: [
      'E|9---|\nB|----|\nG|----|\nD|----|\nA|1---|\nE|----|\n',
      'scale length: 864 mm\n\nE|5---|\nB|1---|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'E|----|\nB|----|\nG|2h9-|\nD|2---|\nA|1---|\nE|----|\n',
    ],
    quiet: [
      'E|9---|\nB|----|\nG|----|\nD|----|\nA|0---|\nE|----|\n',
      'E|16--|\nB|12--|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'scale length: 381 mm\n\nE|5---|\nB|1---|\nG|----|\nD|----|\nA|----|\nE|----|\n',
      'fretting: slide\n\nE|9---|\nB|9---|\nG|----|\nD|----|\nA|----|\nE|----|\n',
    ],
  },
};

/** A stopped string. */
interface Stopped {
  readonly note: NoteReading;
  /** The number written. */
  readonly fret: number;
  /** Counted from the nut. */
  readonly stop: number;
}

/** How far apart the outer fingers of one moment are. */
interface Stretch {
  readonly low: Stopped;
  readonly high: Stopped;
  /** Millimetres on the neck. */
  readonly span: number;
}

/** The widest stretch of a system, in millimetres, and its note on the highest fret; undefined without any. */
export function widestStretch(
  scene: Scene,
): { readonly span: number; readonly note: NoteReading } | undefined {
  if (scene.header.fretting === 'slide') return undefined;
  const joined = scene.reading.notes.filter(isJoinedByFinger);
  let widest: Stretch | undefined;
  for (const column of onsetsOf(scene.reading)) {
    const found = column.length < 2 ? undefined : stretchOf(scene, column, joined);
    if (found && found.span > (widest?.span ?? 0)) widest = found;
  }
  return widest && { span: widest.span, note: widest.high.note };
}

function findingFor(
  scene: Scene,
  column: readonly NoteReading[],
  joined: readonly NoteReading[],
): SystemFinding | undefined {
  const { reach } = scene;
  const found = stretchOf(scene, column, joined);
  if (!found || found.span <= reach) return undefined;
  const { low, high, span } = found;
  const { line, start, end } = high.note;
  return {
    line,
    start,
    end,
    message: `Frets ${low.fret} and ${high.fret}, stopped at one time, lie ${Math.round(span)} mm apart; your reach is set to ${Math.round(reach)} mm. Play one of them on another string, or leave one out.`,
  };
}

function stretchOf(
  scene: Scene,
  column: readonly NoteReading[],
  joined: readonly NoteReading[],
): Stretch | undefined {
  const stopped = [...column, ...joinedTo(scene, column, joined)].flatMap(
    (note) => stoppedBy(scene, note) ?? [],
  );
  const [first] = stopped;
  if (!first || stopped.length < 2) return undefined;
  const low = stopped.reduce((a, b) => (b.stop < a.stop ? b : a), first);
  const high = stopped.reduce((a, b) => (b.stop > a.stop ? b : a), first);
  return { low, high, span: spanBetween(low.stop, high.stop, scene.header.scaleLength) };
}

function isJoinedByFinger(note: NoteReading): boolean {
  return (
    note.joinedFrom !== undefined &&
    note.techniques.some(({ kind }) => kind === 'hammer-on' || kind === 'pull-off')
  );
}

/** Notes hammered on or pulled off from one of a column while others of it still sound: the fingers of both are down. */
function joinedTo(
  scene: Scene,
  column: readonly NoteReading[],
  joined: readonly NoteReading[],
): readonly NoteReading[] {
  return joined.filter((note) => {
    const from = note.joinedFrom === undefined ? undefined : scene.reading.notes[note.joinedFrom];
    if (!from || !column.includes(from)) return false;
    return column.some((held) => held !== from && (!held.ends || compare(held.ends, note.onset) > 0));
  });
}

/** Where a finger stops the string; undefined for open strings, harmonics, muted strokes and what is tapped. */
function stoppedBy(scene: Scene, note: NoteReading): Stopped | undefined {
  if (note.fret === undefined || note.kind === 'natural-harmonic') return undefined;
  if (note.techniques.some(({ kind }) => kind === 'tap')) return undefined;
  const { header, reading } = scene;
  const index = reading.strings.find(({ line }) => line === note.line)?.index ?? -1;
  const board = fingerboardOf(header);
  const read = board.read(index, note.fret);
  if (!read.ok || read.stopFret === board.absoluteFret(index, 0)) return undefined;
  return { note, fret: note.fret, stop: read.stopFret };
}
