import type { TabDocument, TextEdit } from '../../notation/tabDocument';

/** One edit that turns a document into new lines: from the first line that differs to the last. */
export function editTo(document: TabDocument, lines: readonly string[]): TextEdit[] {
  const old = document.lineCount;
  let first = 0;
  while (first < old && first < lines.length && document.line(first).text === lines[first]) first += 1;
  let lastOld = old - 1;
  let lastNew = lines.length - 1;
  while (lastOld >= first && lastNew >= first && document.line(lastOld).text === lines[lastNew]) {
    lastOld -= 1;
    lastNew -= 1;
  }
  if (first > lastOld && first > lastNew) return [];
  const newText = lines.slice(first, lastNew + 1);
  if (lastOld < first) {
    // Lines were only put in: before an old line, or behind the last one.
    if (first < old)
      return [{ range: at(first, 0, first, 0), newText: newText.map((line) => `${line}\n`).join('') }];
    const end = document.line(old - 1).text.length;
    return [{ range: at(old - 1, end, old - 1, end), newText: newText.map((line) => `\n${line}`).join('') }];
  }
  const end = document.line(lastOld).text.length;
  if (lastNew < first) {
    const next = lastOld + 1 < old;
    return [
      {
        range: next
          ? at(first, 0, lastOld + 1, 0)
          : at(Math.max(0, first - 1), first > 0 ? document.line(first - 1).text.length : 0, lastOld, end),
        newText: '',
      },
    ];
  }
  return [{ range: at(first, 0, lastOld, end), newText: newText.join('\n') }];
}

function at(line: number, character: number, endLine: number, endCharacter: number): TextEdit['range'] {
  return { start: { line, character }, end: { line: endLine, character: endCharacter } };
}
