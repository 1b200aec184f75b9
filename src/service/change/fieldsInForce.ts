import { formatCapo } from '../../instrument/capo';
import { formatTuning, sameTuning } from '../../instrument/tuningFormat';
import { formatKey } from '../../music/key';
import { Document } from '../../notation/document';
import type { FieldName } from '../../notation/fieldNames';
import type { Header } from '../../notation/header';
import { parseLine } from '../../notation/parseLine';
import type { TabDocument } from '../../notation/tabDocument';

/** A field that a change of a passage may have to state: before the passage, and again after it. */
interface StatedField {
  readonly field: FieldName;
  readonly same: (a: Header, b: Header) => boolean;
  /** The value as text; undefined when nothing can be written that says it. */
  readonly value: (header: Header, document: TabDocument) => string | undefined;
}

/** In the order in which they are to be written; a capo depends on the tuning. */
const STATED: readonly StatedField[] = [
  { field: 'tuning', same: (a, b) => sameTuning(a.tuning, b.tuning), value: tuningText },
  {
    field: 'capo',
    same: (a, b) => formatCapo(a.capo) === formatCapo(b.capo),
    value: (header) => formatCapo(header.capo),
  },
  {
    field: 'key',
    same: (a, b) => (a.key && formatKey(a.key)) === (b.key && formatKey(b.key)),
    value: (header) => header.key && formatKey(header.key),
  },
];

/** A tuning as it was written, when that still says it. */
function tuningText({ tuning, instrument }: Header): string {
  return tuning.text === '' || tuning.text === instrument.usualTuning
    ? formatTuning(tuning, instrument)
    : tuning.text;
}

/**
 * Sees to it that each system stands under the fields it must: a field that holds for a changed passage from its
 * first system on is rewritten where it stands; elsewhere the field is stated before the passage and the old value
 * again after it.
 * @param lines the new lines of the document
 * @param required for the line each system begins on, the header it must have
 */
export function stateFields(
  lines: string[],
  required: Map<number, Header>,
  userTunings: Readonly<Record<string, string>>,
): string[] {
  // Each round states one field at one place, so that there can be no more rounds than systems and fields.
  const most = (required.size + 1) * STATED.length * 2;
  for (let round = 0; round < most; round++) {
    const document = new Document(lines.join('\n'), userTunings);
    if (!stateNext(document, lines, required)) break;
  }
  return lines;
}

function stateNext(document: Document, lines: string[], required: Map<number, Header>): boolean {
  for (const system of document.systems) {
    const wanted = required.get(system.firstLine);
    const stated = wanted && STATED.find(({ same }) => !same(system.header, wanted));
    if (!wanted || !stated) continue;
    const value = stated.value(wanted, document);
    if (value === undefined) {
      required.set(system.firstLine, { ...wanted, key: system.header.key });
      return true;
    }
    const place = fieldLineFor(document, system.firstLine, stated, wanted);
    if (place.replace) lines[place.line] = withValue(lines[place.line] ?? '', value);
    else insertLine(lines, required, place.line, fieldLine(stated.field, value, lines[place.line - 1]));
    return true;
  }
  return false;
}

/**
 * Where to state a field for the system that begins at a line: in the line that sets it now, when no earlier system
 * hangs on that line; else in a line of its own, behind the fields right above when they are this system's own, or
 * right before it.
 */
function fieldLineFor(
  document: Document,
  systemLine: number,
  stated: StatedField,
  wanted: Header,
): { line: number; replace: boolean } {
  const group = document.fieldGroups.findLast(
    ({ fields }) => (fields[0]?.lineIndex ?? Infinity) < systemLine,
  );
  const { part } = wanted;
  const between = document.systems.some(
    (system) =>
      system.firstLine < systemLine &&
      system.header.part === part &&
      group !== undefined &&
      system.firstLine > (group.fields[0]?.lineIndex ?? 0),
  );
  if (group && group.after.part === part && !between) {
    const own = group.fields.findLast(({ line }) => line.field === stated.field);
    if (own) return { line: own.lineIndex, replace: true };
    const last = group.fields.at(-1);
    if (last) return { line: last.lineIndex + 1, replace: false };
  }
  return { line: systemLine, replace: false };
}

/** A field line with another value, its spaces and its remark of case kept. */
function withValue(line: string, value: string): string {
  return line.replace(
    /^([^:]*:[ \t\u00a0]*).*$/,
    (_, head: string) => (/\s$/.test(head) ? head : `${head} `) + value,
  );
}

/** A new field line; its value stands under that of the field above, as far as its name leaves room. */
function fieldLine(field: FieldName, value: string, above: string | undefined): string {
  const parsed = above === undefined ? undefined : parseLine(above);
  const column = parsed?.kind === 'field' && parsed.value !== '' ? parsed.valueStart : 0;
  return `${field}:`.padEnd(Math.max(column, field.length + 2)) + value;
}

function insertLine(lines: string[], required: Map<number, Header>, at: number, text: string): void {
  lines.splice(at, 0, text);
  const moved = [...required].map(([line, header]): [number, Header] => [
    line >= at ? line + 1 : line,
    header,
  ]);
  required.clear();
  for (const [line, header] of moved) required.set(line, header);
}
