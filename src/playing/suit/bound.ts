import type { MoveTable } from '../hand/handLayer';
import { slotOf, type Block, type Kind, type Kinds } from './kinds';

/** The way to a moment from the one before. */
export interface Step {
  readonly table: MoveTable;
  /** Travel from each position to the next one up, rounded down: sums of it are never above the table. */
  readonly up: Float64Array;
}

/** A lower bound of what a tuning costs from each moment on. */
export class Bound {
  /** For each kind the blocks that the tuning gives, and the least by slot. */
  private readonly blocks: Block[][];
  private readonly least: Float64Array[];
  /** For each moment, by slot: at least this is still to come after it. */
  readonly rest: Float64Array[];
  private readonly order: readonly number[];
  private readonly size: number;
  private readonly best: Float64Array;
  private readonly near: Float64Array;

  /** @param steps the step into each moment; of the first it is not looked at */
  constructor(
    private readonly kinds: Kinds,
    private readonly steps: readonly Step[],
    private readonly width: number,
  ) {
    this.size = slotOf(width, 0);
    this.best = new Float64Array(width);
    this.near = new Float64Array(width);
    this.blocks = kinds.kinds.map(() => []);
    this.least = kinds.kinds.map(() => new Float64Array(this.size));
    this.rest = kinds.of.map(() => new Float64Array(this.size));
    // Small moments first: they are soon looked up, and one that cannot be played ends it.
    this.order = kinds.kinds.map((_, i) => i).sort((a, b) => sizeOf(kinds.kinds, a) - sizeOf(kinds.kinds, b));
  }

  /** How many steps `gather` takes. */
  get kindCount(): number {
    return this.order.length;
  }

  /**
   * Looks up one kind's blocks in a tuning, given by the index of each string's offer.
   * @returns whether the moment can be played
   */
  gather(step: number, tuning: readonly number[]): boolean {
    const which = this.order[step] ?? 0;
    const blocks = this.blocks[which] ?? [];
    if (this.kinds.kinds[which]?.gather(tuning, blocks) !== true) return false;
    const least = this.least[which] ?? NONE;
    least.fill(Infinity);
    for (const block of blocks) {
      const { slots, least: own } = block;
      for (let i = 0; i < slots.length; i++) {
        const slot = slots[i] ?? 0;
        const cost = own[i] ?? Infinity;
        if (cost < (least[slot] ?? Infinity)) least[slot] = cost;
      }
    }
    return true;
  }

  /** All blocks of a kind in the tuning that was gathered, with their states. */
  blocksOf(which: number): readonly Block[] {
    const kind = this.kinds.kinds[which];
    const blocks = this.blocks[which] ?? [];
    if (kind) for (const block of blocks) if (block.from < 0) kind.lay(block);
    return blocks;
  }

  /** The bound of the whole passage, in millionths, once every kind is gathered; fills `rest`. */
  sweep(): number {
    const { of } = this.kinds;
    const { width } = this;
    const { best, near } = this;
    this.rest[of.length - 1]?.fill(0);
    for (let at = of.length - 1; at > 0; at--) {
      const least = this.least[of[at] ?? 0] ?? NONE;
      const rest = this.rest[at] ?? NONE;
      const into = this.rest[at - 1] ?? NONE;
      const step = this.steps[at];
      if (!step) continue;
      const { up, table } = step;
      for (let p = 0; p < width; p++) {
        const slot = p + p;
        const lifted = (least[slot] ?? Infinity) + (rest[slot] ?? 0);
        const down = (least[slot + 1] ?? Infinity) + (rest[slot + 1] ?? 0);
        best[p] = near[p] = lifted < down ? lifted : down;
      }
      for (let p = 1; p < width; p++) {
        const way = (near[p - 1] ?? Infinity) + (up[p - 1] ?? 0);
        if (way < (near[p] ?? Infinity)) near[p] = way;
      }
      for (let p = width - 2; p >= 0; p--) {
        const way = (near[p + 1] ?? Infinity) + (up[p] ?? 0);
        if (way < (near[p] ?? Infinity)) near[p] = way;
      }
      const free = Math.min(table.freeShift, table.shift);
      for (let p = 0; p < width; p++) {
        const stay = best[p] ?? Infinity;
        const go = near[p] ?? Infinity;
        into[p + p] = Math.min(stay, go + free);
        into[p + p + 1] = Math.min(stay, go + table.shift);
      }
    }
    const least = this.least[of[0] ?? 0] ?? NONE;
    const rest = this.rest[0] ?? NONE;
    let bound = of.length === 0 ? 0 : Infinity;
    for (let slot = 0; slot < this.size && of.length > 0; slot++) {
      const whole = (least[slot] ?? Infinity) + (rest[slot] ?? 0);
      if (whole < bound) bound = whole;
    }
    return bound;
  }
}

const NONE = new Float64Array(0);

function sizeOf(kinds: readonly Kind[], which: number): number {
  return kinds[which]?.size ?? 0;
}

/** A step with its lower sums. */
export function stepOf(table: MoveTable): Step {
  const up = new Float64Array(table.width);
  for (let p = 0; p + 1 < table.width; p++)
    up[p] = Math.max(0, (table.travel[p * table.width + p + 1] ?? 0) - 1);
  return { table, up };
}
