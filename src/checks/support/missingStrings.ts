import { widthOfText } from '../../notation/columns';
import { emptyBars, fullLine } from '../../notation/emptyBars';
import type { Header } from '../../notation/header';
import { placesThatFit, usualLabel } from '../../notation/labels';
import type { ParsedLine, StringLine } from '../../notation/parsedLine';
import { parseLine } from '../../notation/parseLine';
import type { SystemReading } from '../../notation/reading';
import { sameSound } from '../../notation/sameReading';
import { readSystem, type SystemPosition } from '../../notation/systemReading';
import type { System } from '../../notation/tabDocument';
import type { Mend } from '../check';
import { lastFirst, smallestEdit } from './edits';
import { hasOctave } from './labelled';

/**
 * Writes the strings that a system leaves out, as lines of dashes with the bar signs of the others, so that it has all
 * strings of its tuning; nothing sounds otherwise.
 * @returns undefined where none is left out, and where the labels do not say which strings the lines are
 */
export function writeMissingStrings(system: System): Mend | undefined {
  const { lines, reading, header, firstLine } = system;
  const texts = withAllStrings(lines, reading, header, system);
  const absent = header.tuning.strings.length - reading.strings.length;
  if (!texts) return undefined;
  return {
    title:
      absent === 1 ? 'Write the string that is left out' : `Write the ${absent} strings that are left out`,
    preferred: false,
    harmless: true,
    edits: lastFirst(
      lines.flatMap(({ text }, i) => smallestEdit(firstLine + i, 0, text, (texts[i] ?? [text]).join('\n'))),
    ),
  };
}

/**
 * For each line of a system the lines that take its place, so that all strings of the tuning stand there.
 * @returns undefined as above
 */
export function withAllStrings(
  lines: readonly ParsedLine[],
  reading: SystemReading,
  header: Header,
  position: SystemPosition,
): readonly (readonly string[])[] | undefined {
  const { strings } = header.tuning;
  const present = reading.strings.map(({ index }) => index);
  const written = lines.filter((line): line is StringLine => line.kind === 'string');
  const full = fullLine(written);
  if (!full || present.length >= strings.length || present.includes(-1)) return undefined;
  const labels = written.map(({ label }) => label);
  if (placesThatFit(labels, header.tuning, 2).length !== 1) return undefined;
  const { start } = full.label;
  const room = widthOfText(full.text.slice(start, full.bodyStart));
  const octaves = labels.some(hasOctave);
  const numbered = labels.every(({ number }) => number !== undefined);
  const nameOf = (index: number): string =>
    numbered
      ? String(strings.length - index)
      : (usualLabel(header.tuning, index, octaves).split('/')[0] ?? '');
  const absent = strings.map((_, index) => index).filter((index) => !present.includes(index));
  const widest = Math.max(room, ...absent.map((index) => widthOfText(nameOf(index))));
  const newLine = (index: number): string =>
    ' '.repeat(start) + nameOf(index).padEnd(widest) + emptyBars(full);
  // Each string stands above the next lower one that is written; those below all of them, behind the last.
  const highFirst = [...absent].reverse();
  const texts = lines.map((line, at): string[] => {
    if (line.kind !== 'string' && line.kind !== 'row') return [line.text];
    const padded =
      line.text.slice(0, line.bodyStart) + ' '.repeat(widest - room) + line.text.slice(line.bodyStart);
    const own = reading.strings.findIndex((string) => string.line === at);
    if (own < 0) return [padded];
    const index = present[own] ?? 0;
    const upTo = present[own - 1] ?? strings.length;
    const above = highFirst.filter((other) => other > index && other < upTo);
    const below = own === present.length - 1 ? highFirst.filter((other) => other < index) : [];
    return [...above.map(newLine), padded, ...below.map(newLine)];
  });
  const after = readSystem(texts.flat().map(parseLine), header, position);
  return sameSound(reading, after) && after.strings.length === strings.length ? texts : undefined;
}
