import type { Range } from 'vscode-languageclient';

/**
 * The first bar of a passage, to try on it what the user types: the whole passage might take longer than a keystroke.
 * A passage begins at a bar sign, and an empty range means the bar at that place.
 */
export function firstBar(passage: Range | undefined): Range | undefined {
  return passage && { start: passage.start, end: passage.start };
}
