import type { Item } from '../moments';
import type { Place } from '../places';
import { ANYTHING, carriedInto, handStatesOf, type HandState } from '../hand/handStates';
import { exact, type Frame } from '../hand/frame';
import type { RefingerWeights } from '../hand/options';
import type { RingingMoment } from '../hand/ringing';
import { Numbering } from './numbering';
import type { OpenPlaces } from './openPlaces';
import { countOf } from './space';
import type { States } from './states';

/** What the hand can do at a moment with each of its notes on a given string in a given tuning of that string. */
export interface Block {
  /** The least that states cost, by `slotOf` their position and whether a finger is down; parallel arrays. */
  readonly slots: readonly number[];
  readonly least: readonly number[];
  /** What it was built from: for each note its string, and the index of that string's offer. */
  readonly chosen: readonly number[];
  readonly offers: readonly number[];
  /** The first of its states, and the one after the last; −1 where they have not been asked for. */
  from: number;
  to: number;
}

/** Position of the index finger and whether a finger is down, as one number. */
export function slotOf(position: number, down: number): number {
  return position * 2 + down;
}

/** A choice made so far: one node for the notes before, a string and its tuning for each. */
interface Node {
  /** By string and offer; the last entry is for a note let go. Undefined: not looked at yet; null: impossible. */
  readonly next: (Node | null | undefined)[];
  block: Block | undefined;
  /** Lowest and highest fret that is stopped, `NO_STOP` and 0 where none is. */
  readonly low: number;
  readonly high: number;
}

interface Fixed {
  readonly item: Item;
  readonly places: OpenPlaces;
  readonly mayGo: boolean;
  /** What letting it go costs at this moment at least; see `shareOfCut`. */
  readonly share: number;
  /** Whether no finger can be on it from the moment before. */
  readonly fresh: boolean;
}

/**
 * Moments that are alike in every tuning: the same notes, held and struck, the same joins. Blocks are built when first
 * asked for and shared by all moments of the kind and by all tunings that have those strings in common.
 */
export class Kind {
  /** What states ask and tell, numbered over all blocks of the kind. */
  private readonly needNumbers = new Numbering();
  private readonly outNumbers = new Numbering();
  private readonly laid: Block[] = [];
  private readonly root: Node = node(NO_STOP, 0);
  private readonly items: readonly Fixed[];
  private readonly width: number;
  private readonly strings: number;
  /** Below the entries of joins in `needs`. */
  readonly joined: number;

  constructor(
    private readonly moments: readonly RingingMoment[],
    private readonly at: number,
    private readonly frame: Frame,
    private readonly weights: RefingerWeights,
    fixed: readonly Fixed[],
    offers: readonly number[],
    private readonly states: States,
  ) {
    this.items = fixed;
    this.strings = offers.length;
    this.width = Math.max(1, ...offers);
    const moment = moments[at];
    this.joined = moment ? moment.through.length + moment.sources.length : 0;
  }

  get needs(): readonly (readonly number[])[] {
    return this.needNumbers.all;
  }

  get outs(): readonly (readonly number[])[] {
    return this.outNumbers.all;
  }

  /** How many notes sound or may sound. */
  get size(): number {
    return this.items.length;
  }

  /**
   * Every block that a tuning gives.
   * @param tuning for each string the index of its offer
   * @returns whether there is any state
   */
  gather(tuning: readonly number[], into: Block[]): boolean {
    into.length = 0;
    this.walk(this.root, 0, 0, tuning, into, []);
    return into.length > 0;
  }

  private walk(
    from: Node,
    position: number,
    taken: number,
    tuning: readonly number[],
    into: Block[],
    chosen: number[],
  ): void {
    const fixed = this.items[position];
    if (!fixed) {
      from.block ??= this.build(chosen, tuning);
      if (from.block.slots.length > 0) into.push(from.block);
      return;
    }
    for (let index = 0; index < this.strings; index++) {
      if ((taken >> index) & 1) continue;
      const offer = tuning[index] ?? 0;
      const entry = index * this.width + offer;
      let child = from.next[entry];
      if (child === undefined) from.next[entry] = child = this.child(from, fixed, index, offer);
      if (child === null) continue;
      chosen[position] = index;
      this.walk(child, position + 1, taken | (1 << index), tuning, into, chosen);
    }
    if (!fixed.mayGo) return;
    const entry = this.strings * this.width;
    const child = (from.next[entry] ??= node(from.low, from.high));
    chosen[position] = LET_GO;
    this.walk(child, position + 1, taken, tuning, into, chosen);
  }

  /** Null where the note has no place there, or none that the widest hand could hold beside the notes before. */
  private child(from: Node, fixed: Fixed, index: number, offer: number): Node | null {
    const places = fixed.places.byString[index]?.[offer] ?? [];
    const [only] = places;
    if (!only) return null;
    if (places.length > 1 || only.stoppedFret === undefined) return node(from.low, from.high);
    const low = Math.min(from.low, only.stoppedFret);
    const high = Math.max(from.high, only.stoppedFret);
    const { x } = this.frame;
    if ((x[high] ?? 0) - (x[low] ?? 0) > widestOf(this.frame)) return null;
    return node(low, high);
  }

  /**
   * The states of a block. Of larger moments there are very many, most of them looked at for their least cost alone:
   * those are built again when a search first asks for them.
   */
  lay(block: Block): void {
    if (block.from < 0) this.put(block, this.made(block.chosen, block.offers));
  }

  /** Where the notes that begin here are in one of its states. */
  placesIn(state: number): readonly (Place | undefined)[] {
    // Blocks are laid one after the other, so they stand in the order of their states.
    let [low, high] = [0, this.laid.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.laid[middle]?.from ?? Infinity) <= state) low = middle;
      else high = middle;
    }
    const block = this.laid[low];
    return block ? (this.made(block.chosen, block.offers).states[state - block.from]?.own ?? []) : [];
  }

  private build(chosen: readonly number[], tuning: readonly number[]): Block {
    const strings = this.items.map((_, position) => chosen[position] ?? LET_GO);
    const offers = strings.map((index) => tuning[index] ?? 0);
    const made = this.made(strings, offers);
    const { slots, least } = this.leastOf(made);
    const block: Block = { slots, least, chosen: strings, offers, from: -1, to: -1 };
    if (this.items.length <= KEPT_NOTES) this.put(block, made);
    return block;
  }

  private made(chosen: ArrayLike<number>, offers: ArrayLike<number>): Made {
    const moment = this.moments[this.at];
    if (!moment) throw new Error('A kind stands for a moment of its passage.');
    const first = new Map<Item, number>();
    const stringOf = new Map<number, Fixed>();
    const before: (readonly Place[])[] = [];
    let gone = 0;
    this.items.forEach((fixed, position) => {
      const index = chosen[position] ?? LET_GO;
      const offer = offers[position] ?? 0;
      const open: { places: readonly Place[] } = fixed.item;
      before.push(open.places);
      open.places = index === LET_GO ? [] : (fixed.places.byString[index]?.[offer] ?? []);
      if (index === LET_GO) {
        gone += fixed.share;
        return;
      }
      first.set(fixed.item, fixed.places.first[index]?.[offer] ?? 0);
      stringOf.set(index, fixed);
    });
    const next = this.moments[this.at + 1];
    const all = handStatesOf(moment, this.at, next, this.frame, this.weights, 0, true);
    this.items.forEach(({ item }, position) => {
      const open: { places: readonly Place[] } = item;
      open.places = before[position] ?? [];
    });
    const { through, sources, ringing } = moment;
    // A note that was not let go here has a block of its own where it is.
    const states = all.filter(({ need }) =>
      ringing.every((item, i) => !first.has(item) || need[through.length + sources.length + i] !== ANYTHING),
    );
    const whole = (code: number, item: Item | undefined): number => {
      const start = item && first.get(item);
      return code < 8 || start === undefined ? code : code + start * 8;
    };
    const carried = carriedInto(next);
    return {
      states,
      gone,
      stringOf,
      needOf: ({ need }) =>
        need.map((code, i) => {
          if (i < through.length) return whole(code, through[i]);
          return i < this.joined ? code : whole(code, ringing[i - this.joined]);
        }),
      outOf: ({ out }) =>
        out.map((code, i) => {
          const item = carried[i];
          return item?.follower?.moment === this.at + 1 ? code : whole(code, item);
        }),
    };
  }

  private leastOf({ states, gone, stringOf }: Made): Pick<Block, 'slots' | 'least'> {
    const slots: number[] = [];
    const least: number[] = [];
    const press = this.frame.slide ? 0 : exact(Math.min(this.frame.k.setDown, this.frame.k.moved));
    for (const { grip, cost } of states) {
      const { stops, fingers } = grip;
      // Bits of fingers: those that are down, and those that may have been down before.
      let down = 0;
      let old = 0;
      for (let i = 0; i < stops.length; i++) {
        const bit = 1 << (fingers[i] ?? 1);
        down |= bit;
        if (stringOf.get(stops[i]?.index ?? -1)?.fresh !== true) old |= bit;
      }
      const slot = slotOf(grip.position, stops.length > 0 ? 1 : 0);
      const whole = cost + gone + countOf(down & ~old) * press;
      const at = slots.indexOf(slot);
      if (at < 0) {
        slots.push(slot);
        least.push(whole);
      } else if (whole < (least[at] ?? Infinity)) least[at] = whole;
    }
    return { slots, least };
  }

  private put(block: Block, { states, needOf, outOf }: Made): void {
    block.from = this.states.size;
    for (const state of states)
      this.states.add(state, this.needNumbers.of(needOf(state)), this.outNumbers.of(outOf(state)));
    block.to = this.states.size;
    if (block.to > block.from) this.laid.push(block);
  }
}

/** States in the making, with what letting notes go costs them at least and which note is on each string. */
interface Made {
  readonly states: readonly HandState[];
  readonly gone: number;
  readonly stringOf: ReadonlyMap<number, Fixed>;
  /** What a state asks and tells, in codes that hold for every tuning. */
  readonly needOf: (state: HandState) => readonly number[];
  readonly outOf: (state: HandState) => readonly number[];
}

/** Blocks of no more notes than this keep their states. */
const KEPT_NOTES = 2;

const LET_GO = -1;

/** Above every fret: the lowest of no stops at all. */
const NO_STOP = 127;

function node(low: number, high: number): Node {
  return { next: [], block: undefined, low, high };
}

/** No two stops are farther apart than this, in millimetres, with room for rounding. */
function widestOf(frame: Frame): number {
  if (frame.slide) return 1e-6;
  return (frame.thumb ? Infinity : Math.min(frame.span, frame.limits[1]?.[4] ?? Infinity)) + 1e-6;
}

/** The kinds of a passage's moments. */
export interface Kinds {
  readonly kinds: readonly Kind[];
  /** For each moment the index of its kind. */
  readonly of: readonly number[];
}

/** Sorts the moments of a passage into kinds. */
export function kindsOf(
  moments: readonly RingingMoment[],
  placesByKey: readonly OpenPlaces[],
  frame: Frame,
  weights: RefingerWeights,
  offers: readonly number[],
  states: States,
): Kinds {
  const kinds: Kind[] = [];
  const known = new Map<string, number>();
  const runs = runsOf(moments);
  const of = moments.map((moment, at) => {
    const before = moments[at - 1];
    const fix = (item: Item, mayGo: boolean): Fixed => ({
      item,
      places: placesByKey[item.placesKey] ?? NOWHERE,
      mayGo,
      share: mayGo ? Math.floor(exact(frame.k.cut) / (runs.get(item) ?? 1)) : 0,
      fresh: !mayGo && before !== undefined && isFresh(item, moment, before),
    });
    const fixed = [
      ...moment.through.map((item) => fix(item, false)),
      ...moment.ringing.map((item) => fix(item, true)),
      ...moment.own.map((item) => fix(item, false)),
    ];
    const extra = fixed.map(({ share, fresh }) => `${share}${fresh ? 'f' : ''}`).join(' ');
    const key = `${kindKey(moments, at)};${extra}`;
    const old = known.get(key);
    if (old !== undefined) return old;
    known.set(key, kinds.length);
    return kinds.push(new Kind(moments, at, frame, weights, fixed, offers, states)) - 1;
  });
  return { kinds, of };
}

const NOWHERE: OpenPlaces = { byString: [], first: [] };

/**
 * Through how many moments each note should ring. Letting it go costs once, whenever it is done, and it stays away:
 * so each of those moments without it may bear an equal share, and the shares never add up to more.
 */
function runsOf(moments: readonly RingingMoment[]): ReadonlyMap<Item, number> {
  const runs = new Map<Item, number>();
  for (const { ringing } of moments) for (const item of ringing) runs.set(item, (runs.get(item) ?? 0) + 1);
  return runs;
}

/** Pitches nearer than this may be stopped by a finger that stays. */
const APART = 0.5;

/** Whether a finger on the note must come down anew: the moment before stops nothing that sounds like it. */
function isFresh(item: Item, moment: RingingMoment, before: RingingMoment): boolean {
  if (moment.through.includes(item)) return false;
  const { midi, need } = item.note;
  if (midi === undefined || need === 'artificial-harmonic') return false;
  return [...before.own, ...before.through, ...before.ringing].every(
    ({ note }) =>
      note.need !== 'artificial-harmonic' && (note.midi === undefined || Math.abs(note.midi - midi) > APART),
  );
}

/** Moments with equal keys have equal states in every tuning. */
function kindKey(moments: readonly RingingMoment[], at: number): string {
  const moment = moments[at];
  if (!moment) return '';
  const here = [...moment.own, ...moment.through, ...moment.sources, ...moment.ringing];
  const keys = (items: readonly Item[]): string => items.map(({ placesKey }) => placesKey).join(' ');
  const own = moment.own.map((item, i) => {
    const twin = item.note.end === moment.own[i - 1]?.note.end ? '=' : '';
    // The string that it came from decides between equal costs.
    const home = `${item.placesKey}/${item.note.string}`;
    return `${home}/${item.source ? here.indexOf(item.source) : ''}/${item.follower ? 'j' : ''}${twin}`;
  });
  const out = carriedInto(moments[at + 1]).map(
    (item) => `${here.indexOf(item)}${item.follower?.moment === at + 1 ? 's' : ''}`,
  );
  return [
    own.join(','),
    keys(moment.through),
    keys(moment.sources),
    keys(moment.ringing),
    out.join(','),
  ].join(';');
}
