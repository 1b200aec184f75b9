/*
 * A text as it comes from a web page, a mail or an old file, made into lines of single columns.
 */

/** A line of the text that was given. */
export interface PlainLine {
  /** As it was given, without marks of quotation in front. */
  readonly text: string;
  /** One character a column: tab characters are drawn out, look-alike spaces and dashes are plain ones. */
  readonly columns: string;
  readonly hasTabs: boolean;
  /** Of the text given, from 0. */
  readonly index: number;
}

/** The usual width of a tab stop in plain text; common practice, no source. */
const TAB_STOP = 8;

/**
 * The lines of a text, whatever ends them, without a byte order mark. Marks of quotation go where a run of lines has
 * them and tab stands behind them.
 * @param isString whether a line looks like a string of tab
 */
export function plainLines(text: string, isString: (columns: string) => boolean): PlainLine[] {
  const raw = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  return withoutQuotation(raw, isString).map((line, index) => ({
    text: line,
    columns: columnsOf(line),
    hasTabs: line.includes('\t'),
    index,
  }));
}

function withoutQuotation(lines: readonly string[], isString: (columns: string) => boolean): string[] {
  const bare = [...lines];
  for (let from = 0; from < lines.length; from++) {
    if (!quoted(lines[from])) continue;
    let to = from;
    while (to < lines.length && quoted(lines[to])) to += 1;
    const inside = lines.slice(from, to).map((line) => line.replace(/^\s*(?:> ?)+/, ''));
    if (inside.filter((line) => isString(columnsOf(line))).length >= 2) {
      inside.forEach((line, i) => (bare[from + i] = line));
    }
    from = to;
  }
  return bare;
}

function quoted(line: string | undefined): boolean {
  return line !== undefined && line.trimStart().startsWith('>');
}

/** A long dash stays: a text program may have made it of two. */
function columnsOf(line: string): string {
  const plain = /^[\t -~]*$/.test(line) ? line : withPlainSigns(line);
  return plain.includes('\t') ? withoutTabs(plain) : plain;
}

function withPlainSigns(line: string): string {
  return line
    .replace(/[\u200b-\u200d\u2060\ufeff\u00ad]/g, '')
    .replace(/[\u00a0\u2007\u202f]/g, ' ')
    .replace(/[\u2010-\u2013\u2212\u2500]/g, '-')
    .replace(/[│┃¦]/g, '|')
    .replace(/║/g, '‖');
}

function withoutTabs(line: string): string {
  let drawn = '';
  for (const [i, piece] of line.split('\t').entries()) {
    if (i > 0) drawn += ' '.repeat(TAB_STOP - (drawn.length % TAB_STOP));
    drawn += piece;
  }
  return drawn;
}
