import type { PlacedField, TabDocument } from '../notation/tabDocument';
import { lineRange } from './locate';
import type { Place, Range, TextEdit } from './records';
import type { ServiceError } from './serviceApi';

/** What can be renamed at a place: the name of a part, where it stands after `part:`. */
export interface Renamable {
  readonly range: Range;
  readonly name: string;
}

/** The part's name at a place, anywhere on a line of `part:`; undefined on every other line. */
export function renamable(document: TabDocument, place: Place): Renamable | undefined {
  const field = partFields(document).find(({ lineIndex }) => lineIndex === place.line);
  if (!field || field.line.value === '') return undefined;
  return { range: rangeOf(field), name: field.line.value };
}

/**
 * Gives the part at a place another name wherever its file names it, as one change. Spaces about the new name are left
 * out.
 *
 * Errors, a sentence each: there is no part's name at the place, the new name is empty, holds a line end, or is that of
 * another part, which would make one part of two.
 * @example rename(open('part: low'), { line: 0, character: 6 }, 'bass') // one edit of `low`
 */
export function rename(
  document: TabDocument,
  place: Place,
  newName: string,
): readonly TextEdit[] | ServiceError {
  const at = renamable(document, place);
  if (!at) return { error: 'Only the name of a part can be renamed: put the cursor on the one after part:.' };
  const name = newName.trim();
  if (name === '') return { error: 'A part needs a name; write one or more characters.' };
  if (/[\r\n]/.test(name)) return { error: 'The name of a part stands on one line; leave the line end out.' };
  if (name === at.name) return [];
  if (document.parts.includes(name))
    return {
      error: `There is a part called ${name} already, and the two would become one; choose another name.`,
    };
  return partFields(document)
    .filter(({ line }) => line.value === at.name)
    .map((field) => ({ range: rangeOf(field), newText: name }));
}

function partFields(document: TabDocument): readonly PlacedField[] {
  return document.fieldGroups.flatMap(({ fields }) => fields.filter(({ line }) => line.field === 'part'));
}

function rangeOf({ lineIndex, line }: PlacedField): Range {
  return lineRange(lineIndex, line.valueStart, line.valueStart + line.value.length);
}
