import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { SongShape } from './shapeSource';

/** How far what one player sounds gets in the way of another. */
export interface Overlap {
  /** Notes of the second player. */
  readonly notes: number;
  /** Those at a pitch that the first one sounds at the same time. */
  readonly shared: number;
  /** Those from the first one's lowest to highest note, shared ones included. */
  readonly within: number;
}

/** Pitches less than so many half steps apart count as one: a tuning may have cents (engineering value). */
const SAME = 0.25;

/**
 * What a second player's notes have in common with what a first one sounds, as sounding MIDI numbers.
 * @example overlapOf([67, 71, 79], [43, 55, 67]) // { notes: 3, shared: 1, within: 1 }
 */
export function overlapOf(second: readonly number[], first: readonly number[]): Overlap {
  const [low, high] = [Math.min(...first), Math.max(...first)];
  const shared = second.filter((midi) => first.some((other) => Math.abs(other - midi) < SAME)).length;
  const within = second.filter((midi) => midi >= low - SAME && midi <= high + SAME).length;
  return { notes: second.length, shared, within };
}

/** What a shape sounds under some fields; both notes of a course. */
export function pitchesOf({ frets }: SongShape, header: Header): readonly number[] {
  const board = fingerboardOf(header);
  return frets.flatMap((fret, index) => (fret === null ? [] : (board.pitches(index, fret) ?? [])));
}

/** Where a second player keeps: over the first one's notes, or under them. */
export type Side = 'above' | 'below';

/**
 * How many half steps notes reach into a range from one side, in all: from its top note down for a player above it, from
 * its lowest note up for one below it.
 * @example reachInto([60, 67, 72], [43, 67], 'above') // 7
 */
export function reachInto(second: readonly number[], first: readonly number[], side: Side): number {
  if (first.length === 0) return 0;
  const [low, high] = [Math.min(...first), Math.max(...first)];
  return second.reduce((sum, midi) => sum + Math.max(0, side === 'above' ? high - midi : midi - low), 0);
}

/*
 * What getting in the way costs, in the unit of the hand's table, where a shift with a finger down is 1: a shared pitch
 * is worth about any one move, yet not a shape that no one would play; four half steps into the first one's range
 * weigh as much as a shift (engineering values).
 */
const SHARED = 3;
const HALF_STEP = 0.25;

/** The cost of getting in the first player's way, 0 or more. */
export function overlapCost(second: readonly number[], first: readonly number[], side: Side): number {
  return overlapOf(second, first).shared * SHARED + reachInto(second, first, side) * HALF_STEP;
}
