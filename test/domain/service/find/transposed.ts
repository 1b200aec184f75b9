import { service, settings } from '../cursor';

/** A piece transposed as a whole; undefined where a note would not fit. */
export function transposed(text: string, by: number): string | undefined {
  const document = service.open(text, settings);
  const result = service.transpose(document, { range: undefined, by }, settings);
  if ('error' in result || result.report.unplaced.length > 0) return undefined;
  // From the end, so that no edit moves what the others refer to.
  const edits = [...result.edits].sort(
    (a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character,
  );
  document.edit(edits);
  return document.text();
}
