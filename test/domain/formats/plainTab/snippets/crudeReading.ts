/** A fret or `x` as it stands on a line, and the columns it takes from the line's start behind its label. */
export interface WrittenSign {
  readonly text: string;
  readonly first: number;
  readonly last: number;
}

/** White space, a label or none, up to the first bar line, colon or dash. */
const LABEL = /^\s*(?:[A-Ga-g][#b]?\d?|[1-8])?\s*(?=[|:\-‖│I!])/u;
/** What is no note of its own: where a bend, a release or a trill ends. */
const ENDS = /(?:b|r|tr)\(?\d+(?:[./]\d+)?\)?/g;

/**
 * The string lines of a text by the crudest of rules, which shares no code with any reading of tab: behind a label or
 * none, at least three dashes and no run of four letters. What follows the last bar line without a dash is left out.
 */
export function stringLines(text: string): WrittenSign[][] {
  return unquoted(text.split(/\r\n|\r|\n/))
    .map((line) => line.replace(/[–—−─]/g, '-'))
    .filter((line) => LABEL.test(line))
    .map((line) => withoutRemark(line.replace(LABEL, '')))
    .filter((body) => (body.match(/-/g)?.length ?? 0) >= 3 && !/[A-Za-z]{4}/.test(body))
    .map(signsOf);
}

/** Without the marks of quotation, when every line that is not empty has one. */
export function unquoted(lines: readonly string[]): string[] {
  const quoted = lines.every((line) => line.trim() === '' || line.startsWith('>'));
  return lines.map((line) => (quoted ? line.replace(/^(?:> ?)+/, '') : line));
}

function withoutRemark(body: string): string {
  const bar = body.lastIndexOf('|');
  return bar > body.lastIndexOf('-') ? body.slice(0, bar + 1) : body;
}

function signsOf(body: string): WrittenSign[] {
  const blanked = body.replace(ENDS, (all) => '-'.repeat(all.length));
  return [...blanked.matchAll(/\d+|[xX]/g)].map((found) => ({
    text: found[0].toLowerCase(),
    first: found.index,
    last: found.index + found[0].length - 1,
  }));
}
