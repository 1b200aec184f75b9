import type { Move } from './moveAll';
import type { SingerWay } from './singerAnswer';
import { isSlack } from './strain';
import { offCentre, overshootOf } from './tuneInVoice';

/** How many ways are told. */
export const MOST_WAYS = 12;

/** A way with the move that it is. */
export interface Ranked {
  readonly move: Move;
  readonly way: SingerWay;
}

/*
 * What a way costs beside a tune that lies off the middle of the voice, in half steps off the middle. Engineering
 * values: all strings are turned in a minute or two and have to settle, a capo is put on in a moment and takes neck
 * away, and strings that go up are a risk.
 */
const CAPO_FRET = 0.2;
const RETUNING = 1.5;
const DOWN_STEP = 0.3;
const UP_STEP = 2;
const SLACK = 3;

/** The trouble of a way for the player. */
function trouble({ move: { tuningBy }, way }: Ranked): number {
  const fret = /^\d+$/.test(way.capo) ? Number(way.capo) : 0;
  const turned = tuningBy === 0 ? 0 : RETUNING + Math.abs(tuningBy) * (tuningBy < 0 ? DOWN_STEP : UP_STEP);
  return fret * CAPO_FRET + turned + (isSlack(way.strain) ? SLACK : 0);
}

/**
 * The best ways, first what goes least beyond the voice, then what costs least. For each sounding pitch the cheapest way
 * of each kind is kept; of both together only what neither gives alone, and the best one. The best of each kind is among
 * the `MOST_WAYS` that are told.
 */
export function ranked(all: readonly Ranked[]): readonly Ranked[] {
  const sorted = all
    .map((one) => ({ one, over: one.way.lies ? overshootOf(one.way.lies) : 0, cost: costOf(one) }))
    .sort((a, b) => a.over - b.over || a.cost - b.cost)
    .map(({ one }) => one);
  const seen = new Set<string>();
  const alone = new Set(sorted.flatMap(({ way }) => (way.kind === 'both' ? [] : [way.halfSteps])));
  const bestBoth = sorted.find(({ way }) => way.kind === 'both');
  const kept = sorted.filter((one) => {
    const { kind, halfSteps } = one.way;
    if (kind === 'both' && alone.has(halfSteps) && one !== bestBoth) return false;
    const id = `${kind} ${halfSteps}`;
    return seen.has(id) ? false : seen.add(id);
  });
  const told = new Set(kept.slice(0, MOST_WAYS));
  for (const kind of ['capo', 'tuning', 'both'] as const) {
    const best = kept.find(({ way }) => way.kind === kind);
    if (!best || told.has(best)) continue;
    const last = [...told].findLast(
      (one) => [...told].filter(({ way }) => way.kind === one.way.kind).length > 1,
    );
    if (last) told.delete(last);
    told.add(best);
  }
  return kept.filter((one) => told.has(one));
}

function costOf(one: Ranked): number {
  return (one.way.lies ? offCentre(one.way.lies) : 0) + trouble(one);
}
