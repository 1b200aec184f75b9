import type { ChangeVariant } from '../../server/requests';

/**
 * Which way of changing a section is nearest to a text that is shown: the one most of whose lines stand there. Asked
 * for alone, a section may come with its ways in another order, or with fewer of them.
 *
 * @example closestVariant([best, second], textWithTheSecond) // second
 */
export function closestVariant(variants: readonly ChangeVariant[], shown: string): ChangeVariant | undefined {
  const lines = new Set(linesOf(shown));
  const missing = ({ edits }: ChangeVariant): number =>
    edits.flatMap(({ newText }) => linesOf(newText)).filter((line) => !lines.has(line)).length;
  let closest: ChangeVariant | undefined;
  let fewest = Infinity;
  for (const variant of variants) {
    const count = missing(variant);
    if (count < fewest) [closest, fewest] = [variant, count];
  }
  return closest;
}

function linesOf(text: string): string[] {
  return text.split(/\r\n|\n/);
}
