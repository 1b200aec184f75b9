import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import type { WrittenChord } from '../../music/chord/writtenChord';
import type { HandOptions } from '../../playing/hand/options';
import { findShapes, type Shape } from '../../playing/shapes/findShapes';
import { countTones, wantedChord, type WantedChord } from '../../playing/shapes/wanted';
import type { ShapeChoice } from '../../playing/progression/shapeStates';
import type { Target } from '../../playing/target';
import type { ShapeWishes } from './songAnswer';

/** A shape of the finder as a progression may use it. */
export interface SongShape extends ShapeChoice {
  readonly shape: Shape;
}

/** Frets that are looked over where nothing is said. */
export const USUAL_HIGHEST = 12;
/**
 * Full shapes of each chord that the search may choose from, spread over the neck: variations of one place with a string
 * less would be chosen for the finger that they spare, and sound thin. Measured: in five tunings ten gave the same least
 * sums as fourteen.
 */
const CHOICES = 10;
/** Small ones on each four neighbouring strings. */
const SMALL_CHOICES = 12;
/** Neighbouring strings of a small shape. */
const SMALL = 4;

/** What the search over a song adds to the hand's cost (engineering values; a shift with a finger down is 1). */
const SONG_COSTS = {
  /** A stopped string, where open ones are wanted. */
  stopped: 0.8,
  /** In a small shape: each tone left out, a bass that is not the root, each string muted between two that sound. */
  leftOut: 1.5,
  inversion: 1,
  innerMuted: 2.5,
};

/** Shapes are looked for once under the same fields: a preview, a chart and the change itself ask for the same. */
const KNOWN = new WeakMap<Header, Map<string, readonly SongShape[]>>();
const MOST_KNOWN = 500;

/** The same as `songShapes`, remembered. */
export function knownShapes(
  chord: WrittenChord,
  header: Header,
  target: Target,
  hand: HandOptions,
  wishes: ShapeWishes,
): readonly SongShape[] {
  let known = KNOWN.get(header);
  if (!known || known.size > MOST_KNOWN) KNOWN.set(header, (known = new Map<string, readonly SongShape[]>()));
  const { style = 'full', highestFret = USUAL_HIGHEST, open = '' } = wishes;
  const hands = [target.reach, hand.thumb, hand.constants.position.value];
  const key = [chord.text, style, highestFret, open, ...hands].join(' ');
  let shapes = known.get(key);
  if (!shapes) known.set(key, (shapes = songShapes(chord, header, target, hand, wishes)));
  return shapes;
}

/**
 * The shapes of a chord to choose from, each with what it lacks: strings that stay silent, a fifth left out, a bass that
 * is not the root. What it costs the hand is for the search over the whole progression to say.
 */
export function songShapes(
  chord: WrittenChord,
  header: Header,
  target: Target,
  hand: HandOptions,
  wishes: ShapeWishes,
): readonly SongShape[] {
  const { style = 'full', highestFret = USUAL_HIGHEST, open } = wishes;
  const wanted = wantedChord(chord, capoShift(header));
  if (!wanted) return [];
  const options = { highestFret, hand: { ...hand, openStrings: open !== false } };
  const shapes =
    style === 'small'
      ? smallShapes(wanted, target, options)
      : findShapes(wanted, target, { ...options, limit: CHOICES }).map(fullShape);
  if (open !== true) return shapes;
  return shapes.map((one) => {
    const stopped = one.shape.grip.placements.filter(({ finger }) => finger !== 0).length;
    return { ...one, extra: one.extra + stopped * SONG_COSTS.stopped };
  });
}

/** What a full shape lacks is what the finder ranks it by beside the hand's cost. */
function fullShape(shape: Shape): SongShape {
  return { shape, frets: fretsOf(shape), extra: Math.max(0, shape.cost - shape.grip.cost) };
}

/** On each four neighbouring strings by themselves: that the others are silent is what was asked for. */
function smallShapes(
  wanted: WantedChord,
  target: Target,
  options: { readonly highestFret: number; readonly hand: HandOptions },
): readonly SongShape[] {
  const count = target.fingerboard.tuning.strings.length;
  const groups = Math.max(1, count - SMALL + 1);
  const found = new Map<string, SongShape>();
  for (let first = 1; first <= groups; first++) {
    const strings = Array.from({ length: Math.min(SMALL, count) }, (_, k) => first + k);
    for (const shape of findShapes(wanted, target, {
      ...options,
      limit: SMALL_CHOICES,
      hand: { ...options.hand, strings },
    })) {
      const frets = fretsOf(shape);
      const isInverted = wanted.bass === undefined && wanted.root !== undefined && shape.bass !== wanted.root;
      const extra =
        countTones(shape.leftOut) * SONG_COSTS.leftOut +
        (isInverted ? SONG_COSTS.inversion : 0) +
        countTones(shape.innerMuted) * SONG_COSTS.innerMuted;
      found.set(frets.join(' '), { shape, frets, extra });
    }
  }
  return [...found.values()];
}

function fretsOf({ frets }: Shape): (number | null)[] {
  return frets.map((fret) => fret ?? null);
}
