import type { ParsedLine } from '../../notation/parsedLine';
import type { LineEdit, Scene } from '../check';

/**
 * Writes other labels before string lines. Columns count from each line's first `|`, so nothing moves; the lines stay
 * in a row where they stood in one.
 * @param labels line of the system → label
 */
export function relabel(scene: Scene, labels: ReadonlyMap<number, string>): readonly LineEdit[] {
  return relabelLines(scene.system.lines, labels);
}

/** The same for the lines of a system. */
export function relabelLines(
  lines: readonly ParsedLine[],
  labels: ReadonlyMap<number, string>,
): readonly LineEdit[] {
  let wider = 0;
  for (const [line, label] of labels) {
    const item = lines[line];
    if (item?.kind === 'string') wider = Math.max(wider, label.length - (item.bodyStart - item.label.start));
  }
  return lines.flatMap((item, line): LineEdit[] => {
    if (item.kind !== 'string' && item.kind !== 'row') return [];
    const label = item.kind === 'string' ? labels.get(line) : undefined;
    if (label !== undefined && item.kind === 'string') {
      const room = item.bodyStart - item.label.start + wider;
      return [{ line, start: item.label.start, end: item.bodyStart, text: label.padEnd(room) }];
    }
    if (wider === 0) return [];
    return [{ line, start: item.bodyStart, end: item.bodyStart, text: ' '.repeat(wider) }];
  });
}
