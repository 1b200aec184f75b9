import { add, subtract, toNumber, type Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import type { System, TabDocument } from '../../notation/tabDocument';
import { withValues } from '../../playing/hand/constants';
import { handOptions } from '../../playing/hand/options';
import {
  easiestProgression,
  type ChosenShape,
  type ProgressionChord,
} from '../../playing/progression/easiestProgression';
import { targetOf } from '../change/placing';
import type { Settings } from '../records';
import type { ChordEvent, ChordSystem } from './chordEvents';
import { knownShapes, USUAL_HIGHEST, type SongShape } from './shapeSource';
import type { ShapeWishes } from './songAnswer';
import { beatLength } from './timesOnBeats';

/** How one name of a song is played, or why it is not. */
export interface PlayedChord {
  readonly event: ChordEvent;
  readonly system: System;
  /** The fields it is played under. */
  readonly header: Header;
  /** Undefined for `N.C.` and where there is none. */
  readonly played: { readonly shape: SongShape; readonly hand: ChosenShape } | undefined;
  /** Why there is none, as the end of a sentence; undefined for `N.C.` and where there is one. */
  readonly reason: string | undefined;
}

/** What a search for the shapes of a song goes by. */
export interface ShapeTask {
  readonly document: TabDocument;
  readonly wishes: ShapeWishes;
  readonly settings: Settings;
  /** The fields a system's chords are played under; its own where left out. */
  readonly headerFor?: (header: Header) => Header;
  /** The name to be played instead of the one written, for another capo. */
  readonly rename?: (event: ChordEvent, before: Header, after: Header) => ChordEvent;
  /** Small shapes beside full ones, for a player who may keep out of the way. */
  readonly anyStyle?: boolean;
  /** Whether a shape up the neck costs as little as one near the nut. */
  readonly anywhere?: boolean;
  /** Cost on top for a shape where it is played, 0 or more. */
  readonly extra?: (event: ChordEvent, system: System, shape: SongShape) => number;
}

/** A song with its shapes. */
export interface PlayedSong {
  /** In the order of the text. */
  readonly played: readonly PlayedChord[];
  /** The least sum of shapes, moves and what was put on top. */
  readonly cost: number;
}

/** Chords that one hand plays in one go: one part, under one set of fields. */
interface Run {
  readonly header: Header;
  readonly chords: { readonly at: number; readonly event: ChordEvent; readonly system: System }[];
}

/**
 * A shape for every name, so that the hand moves least over each stretch of a part under the same fields. Names come
 * back in their order in the text.
 */
export function chooseShapes(systems: readonly ChordSystem[], task: ShapeTask): PlayedSong {
  const { headerFor = (header: Header): Header => header, rename } = task;
  const runs: Run[] = [];
  const open = new Map<string | undefined, Run>();
  let count = 0;
  for (const { slice, events } of systems) {
    const { system } = slice;
    const header = headerFor(system.header);
    let run = open.get(system.header.part);
    if (run?.header !== header) {
      runs.push((run = { header, chords: [] }));
      open.set(system.header.part, run);
    }
    for (const event of events)
      run.chords.push({ at: count++, event: rename ? rename(event, system.header, header) : event, system });
  }
  const played: PlayedChord[] = [];
  let cost = 0;
  for (const run of runs) {
    const own = playRun(run, task);
    cost += own.cost;
    own.played.forEach((chord, i) => (played[run.chords[i]?.at ?? 0] = chord));
  }
  return { played, cost };
}

function playRun({ header, chords }: Run, task: ShapeTask): PlayedSong {
  const { document, wishes, settings, extra, anyStyle } = task;
  const target = targetOf(header, settings);
  const hand = handOptions({
    thumb: settings.thumb,
    ...(task.anywhere && { constants: withValues({ position: 0 }) }),
  });
  const known = new Map<string, readonly SongShape[]>();
  const shapesOf = ({ chord, mark }: ChordEvent): readonly SongShape[] => {
    let shapes = known.get(mark.text);
    if (!shapes) {
      const styles = anyStyle ? (['full', 'small'] as const) : [wishes.style ?? 'full'];
      shapes = styles.flatMap((style) =>
        chord ? knownShapes(chord, header, target, hand, { ...wishes, style }) : [],
      );
      known.set(mark.text, shapes);
    }
    return shapes;
  };
  const beat = toNumber(beatLength(header.meter));
  const starts = chords.map(({ event, system }) => add(document.placeOf(system).onset, event.time));
  const options = chords.map(({ event, system }): readonly SongShape[] => {
    const shapes = shapesOf(event);
    if (!extra) return shapes;
    return shapes.map((shape) => ({ ...shape, extra: shape.extra + extra(event, system, shape) }));
  });
  const progression = chords.map((_, i): ProgressionChord => {
    const quarters = between(starts[i - 1], starts[i]);
    // A chord is held until the beat before the next one, so no more than that is left for the move.
    return {
      shapes: options[i] ?? [],
      seconds: (Math.min(quarters, beat) * 60) / header.tempo.quartersPerMinute,
    };
  });
  const { chosen, cost } = easiestProgression(progression, target, hand);
  const played = chords.map(({ event, system }, i): PlayedChord => {
    const hands = chosen[i];
    const shape = hands && options[i]?.[hands.shape];
    const own = shape && { shape, hand: hands };
    return { event, system, header, played: own, reason: own ? undefined : reasonFor(event, wishes) };
  });
  return { played, cost };
}

function between(from: Fraction | undefined, to: Fraction | undefined): number {
  return from && to ? Math.max(0, toNumber(subtract(to, from))) : 0;
}

function reasonFor({ chord, problem }: ChordEvent, wishes: ShapeWishes): string | undefined {
  if (problem !== undefined) return problem;
  if (!chord?.root) return undefined;
  const { style, open, highestFret = USUAL_HIGHEST } = wishes;
  const kind = `${open === false ? 'closed ' : ''}${style === 'small' ? 'small ' : ''}shape`;
  const wish =
    style === 'small' || open === false
      ? 'ask for full shapes with open strings, or for a higher fret'
      : 'allow a higher fret, or write a simpler chord';
  return `no ${kind} within reach of the hand sounds it up to fret ${highestFret}; ${wish}.`;
}
