import { lineRange } from '../locate';
import type { CompletionItem } from '../records';

/** A stretch of the line at which something is completed. */
export interface Slot {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** Something on offer, before it knows where it goes. */
export interface Offer {
  readonly label: string;
  readonly detail?: string;
  readonly documentation?: string;
  /** What is written; the label where it is left out. */
  readonly text?: string;
}

/**
 * Offers as items in their order.
 * @param group sorts before the items of a greater group
 */
export function itemsOf(
  offers: readonly Offer[],
  slot: Slot,
  kind: CompletionItem['kind'],
  group = 0,
): readonly CompletionItem[] {
  return offers.map(({ label, detail = '', documentation = '', text = label }, i) => ({
    label,
    detail,
    documentation,
    edit: { range: lineRange(slot.line, slot.start, slot.end), newText: text },
    sortText: `${group}${String(i).padStart(4, '0')}`,
    kind,
  }));
}
