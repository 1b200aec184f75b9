import type { FieldName } from '../../notation/fieldNames';
import type { FieldGroup, System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { replace } from './edits';

/**
 * Writes a field's value where it holds for a system: in the line that gives it now, or in a new line with the fields
 * that hold there.
 */
export function setField(
  document: TabDocument,
  system: System,
  field: FieldName,
  value: string,
): readonly TextEdit[] {
  const above = document.fieldGroups.filter((group) => firstLineOf(group) < system.firstLine);
  const own = above.filter(({ after }) => after.part === system.header.part);
  const shared = above.filter(({ after }) => after.part === undefined);
  const groups = [...own, ...shared.filter((group) => !own.includes(group))].sort(byPart(system));
  for (const group of groups) {
    const written = group.fields.filter(({ line }) => line.field === field).at(-1);
    if (written) {
      const { line, lineIndex } = written;
      const gap = line.value === '' && !/\s$/.test(line.text) ? ' ' : '';
      const start = line.value === '' ? line.text.length : line.valueStart;
      return [replace(lineIndex, start, start + line.value.length, gap + value)];
    }
    // A new instrument brings its own values: what was written before it does not hold any more.
    if (group.fields.some(({ line }) => line.field === 'instrument')) return [newLine(group, field, value)];
  }
  const [nearest] = groups;
  if (nearest) return [newLine(nearest, field, value)];
  const apart = document.line(0).kind === 'blank' ? '' : '\n';
  return [replace(0, 0, 0, `${field}: ${value}\n${apart}`)];
}

function firstLineOf(group: FieldGroup): number {
  return group.fields[0]?.lineIndex ?? 0;
}

/** The part's own fields before those of all parts, the nearest first. */
function byPart(system: System): (a: FieldGroup, b: FieldGroup) => number {
  const foreign = (group: FieldGroup): number => (group.after.part === system.header.part ? 0 : 1);
  return (a, b) => foreign(a) - foreign(b) || firstLineOf(b) - firstLineOf(a);
}

/** A new line with a field behind those of a group, its value in their column. */
export function newLine(group: FieldGroup, field: FieldName, value: string): TextEdit {
  const last = group.fields.at(-1);
  const line = last?.lineIndex ?? 0;
  const text = last?.line.text ?? '';
  const name = `${field}:`.padEnd(Math.max(0, (last?.line.valueStart ?? 0) - 1));
  return replace(line, text.length, text.length, `\n${name} ${value}`);
}
