import type { Range, System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { formatSystem } from './formatSystem';
import { lineEdits } from './lineEdits';

/**
 * The edits that set the systems of a document in order: labels and rows padded to one width, bar signs under each
 * other, every line as long as the others, look-alike dashes and bar lines as `-` and `|`. Prose, fields, remarks,
 * comments and blank lines stay as they are, and so do the number of lines and their ends. What sounds, and when,
 * never changes: a system that cannot be set in order exactly stays as it is.
 * @param range the systems that it touches; the whole document where it is left out
 * @returns edits of single lines in the order of the text; none where everything is in order
 * @example format(open('G|0-\nD |--|', DEFAULT_SETTINGS)) // 'G |0-|' and 'D |--|'
 */
export function format(document: TabDocument, range?: Range): readonly TextEdit[] {
  return document.systems.flatMap((system) => {
    if (range && !touches(system, range)) return [];
    const lines = formatSystem(system, isAnchored(document, system));
    if (!lines) return [];
    return system.lines.flatMap((line, i) => {
      const text = lines[i];
      const at = line.kind === 'string' || line.kind === 'row' ? line.bodyStart : 0;
      return text === undefined ? [] : lineEdits(system.firstLine + i, line.text, at, text);
    });
  });
}

/**
 * Whether a line of prose right above or below a system is set out by its columns, as chords or words without a row's word
 * are: it stays as it is, so the columns under it stay, too.
 */
function isAnchored(document: TabDocument, { firstLine, lines }: System): boolean {
  return [firstLine - 1, firstLine + lines.length].some((at) => {
    if (at < 0 || at >= document.lineCount) return false;
    const line = document.line(at);
    return line.kind === 'prose' && (line.nearMiss?.kind === 'row' || /^\s{2}|\S\s{2,}\S/.test(line.text));
  });
}

function touches({ firstLine, lines }: System, { start, end }: Range): boolean {
  // A selection of whole lines ends before the first character of the next line.
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return firstLine <= last && firstLine + lines.length > start.line;
}
