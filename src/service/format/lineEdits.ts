import { smallestEdit } from '../../checks/support/edits';
import type { TextEdit } from '../../notation/tabDocument';

/**
 * The smallest edits that turn a line into another one: one for what stands before its first bar line, one for what
 * follows, so that a cursor in a bar stays where it was.
 * @param bodyStart offset of the first bar line; 0 for a line without one
 */
export function lineEdits(line: number, before: string, bodyStart: number, after: string): TextEdit[] {
  if (before === after) return [];
  // From behind the first bar line: the bar line itself stays, so that the two edits cannot touch.
  const [split, newSplit] = [bodyStart + 1, after.indexOf('|') + 1];
  const apart = bodyStart > 0 && newSplit > 0 && before[bodyStart] === '|';
  if (!apart) return smallestEdit(line, 0, before, after);
  return [
    ...smallestEdit(line, 0, before.slice(0, split), after.slice(0, newSplit)),
    ...smallestEdit(line, split, before.slice(split), after.slice(newSplit)),
  ];
}
