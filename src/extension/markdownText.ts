/** A text that stands in Markdown as it is, signs and all. */
export function markdownText(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+!|<>~&]/g, '\\$&').replace(/\s*\r?\n\s*/g, ' ');
}

/** A table of texts. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(head),
    line(head.map(() => '---')),
    ...rows.map((cells) => line(cells.map(markdownText))),
  ].join('\n');
}
