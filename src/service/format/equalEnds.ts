import { emptyBars } from '../../notation/emptyBars';
import type { ParsedLine, StringLine } from '../../notation/parsedLine';
import type { Draft } from './formatSystem';

/**
 * Lines that end early go on to the end of the others: with dashes, and bar signs where a line of full length has them.
 * A line with a space inside a bar stays, since what follows the space is no remark, and so does one that is out of line.
 */
export function endsMadeEqual({ lines, reading }: Draft): readonly (readonly string[])[] {
  const strings = lines.filter((line): line is StringLine => line.kind === 'string');
  const width = Math.max(0, ...strings.map((line) => line.width));
  if (strings.every((line) => line.width === width)) return [];
  const broken = new Set(
    reading.problems.filter(({ kind }) => kind === 'space-in-bar').map(({ line }) => line),
  );
  const astray = new Set(
    reading.problems.filter(({ kind }) => kind === 'bar-out-of-line').map(({ line }) => line),
  );
  // A line whose sign only seems astray, since others end before it, is the last to go by.
  const whole = lines.flatMap((line, i) =>
    line.kind === 'string' && line.width === width ? [{ line, isAstray: astray.has(i) }] : [],
  );
  const full = (whole.find(({ isAstray }) => !isAstray) ?? whole[0])?.line;
  if (!full) return [];
  const ground = emptyBars(full);
  return [lines.map((line, i) => (broken.has(i) || astray.has(i) ? line.text : extended(line, ground)))];
}

function extended(line: ParsedLine, ground: string): string {
  if (line.kind !== 'string' || line.width >= ground.length) return line.text;
  return line.text.slice(0, line.bodyEnd) + ground.slice(line.width) + line.text.slice(line.bodyEnd);
}
