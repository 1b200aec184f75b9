import type { Place, TextEdit } from '../records';

/** A key that writes or takes away: one character, or one of the two keys that delete. */
export type TypedKey = { readonly text: string } | 'backspace' | 'delete';

/** Where a cursor stands and what it selects; both places are the same when it selects nothing. */
export interface Cursor {
  readonly anchor: Place;
  readonly active: Place;
}

/**
 * What a key does. `text` says that no cursor stands on a staff, so that the key does what it always does; else the edits,
 * which belong together, and where the cursors go. A notice says why a key wrote nothing, or what else was written.
 */
export type TypedOver =
  | { readonly kind: 'text' }
  | {
      readonly kind: 'staff';
      /** In the order of the text, none overlapping another. */
      readonly edits: readonly TextEdit[];
      readonly cursors: readonly Cursor[];
      readonly notice?: string;
    };
