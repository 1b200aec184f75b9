import type { FieldLine } from '../../notation/parsedLine';
import type { TabDocument } from '../../notation/tabDocument';
import { FIELD_GUIDE } from '../fieldGuide';
import type { Settings } from '../records';
import { fieldValueHover } from './fieldValue';
import { capital, lines, quoted } from './text';

/** What a field is for and which values it takes. */
export function fieldNameHover({ field }: FieldLine): string {
  const { what, values } = FIELD_GUIDE[field];
  return lines(`**${field}**: ${what}`, values);
}

/** What was understood of the value; what is wrong with it where it was not, or where a later line overrules it. */
export function fieldHover(
  document: TabDocument,
  lineIndex: number,
  line: FieldLine,
  settings: Settings,
): string {
  const group = document.fieldGroups.find(({ fields }) =>
    fields.some((field) => field.lineIndex === lineIndex),
  );
  const own = group?.problems.filter(({ field }) => field.line === line) ?? [];
  const wrong = own.find(({ kind }) => kind === 'malformed');
  if (wrong) return lines(`**${capital(line.field)}** was not understood`, quoted(wrong.message, 500));
  if (!group || group.fields.findLast((field) => field.line.field === line.field)?.lineIndex !== lineIndex) {
    return isRepeatable(line) ? '' : `**${capital(line.field)}** is written again below; that one holds`;
  }
  const notices = own.filter(({ kind }) => kind === 'notice').map(({ message }) => quoted(message, 500));
  return lines(fieldValueHover(line.field, group.after, settings), ...notices);
}

function isRepeatable({ field }: FieldLine): boolean {
  return field === 'by' || field === 'remark';
}
