import { lastFirst, replace } from '../../checks/support/edits';
import { hasOctave } from '../../checks/support/labelled';
import { relabelLines } from '../../checks/support/relabel';
import { labelTrouble, usualLabel } from '../../notation/labels';
import type { Range, System, TabDocument, TextEdit } from '../../notation/tabDocument';
import type { Mend } from '../records';

/**
 * Labels all lines by the tuning, as is wanted after the tuning was changed: in the part that a line belongs to, and in
 * the whole file where other parts need it too. One edit each, and nothing sounds otherwise.
 * @returns none where fewer than two systems need it
 */
export function relabelEverywhere(document: TabDocument, line: number): readonly Mend[] {
  const wrong = document.systems.filter(needsLabels);
  const { part } = document.headerAt(line);
  const own = wrong.filter(({ header }) => header.part === part);
  const mends: Mend[] = [];
  if (own.length > 1 && own.length < wrong.length) {
    const where = part === undefined ? 'of this part' : `of ${part}`;
    mends.push(mend(`Label all lines ${where} by the tuning (${own.length} systems)`, own));
  }
  if (wrong.length > 1)
    mends.push(mend(`Label all lines of the file by the tuning (${wrong.length} systems)`, wrong));
  return mends;
}

function mend(title: string, systems: readonly System[]): Mend {
  return { title, edits: lastFirst(systems.flatMap(relabelled)), preferred: false, harmless: true };
}

/**
 * Whether a system's labels name other notes than its strings have. Where strings are left out, labels that do not fit say
 * nothing of which strings these are, so that nobody can tell what to write.
 */
export function needsLabels({ lines, reading, header }: System): boolean {
  const { tuning } = header;
  const labels = lines.flatMap((line) => (line.kind === 'string' ? [line.label] : []));
  if (labels.length !== tuning.strings.length) return false;
  const indices = reading.strings.map(({ index }) => index);
  const trouble = labelTrouble(labels, indices, tuning, tuning);
  return trouble !== undefined && trouble !== 'upside-down';
}

/** The edits that label a system's lines by its tuning. */
export function relabelled({ lines, reading, header, firstLine }: System): TextEdit[] {
  const octaves = lines.some((line) => line.kind === 'string' && hasOctave(line.label));
  const labels = new Map(
    reading.strings
      .filter(({ index }) => index >= 0)
      .map(({ line, index }) => [line, usualLabel(header.tuning, index, octaves)]),
  );
  return relabelLines(lines, labels).map(({ line, start, end, text }) =>
    replace(firstLine + line, start, end, text),
  );
}

/** The fields that change what the strings are. */
const TUNES: ReadonlySet<string> = new Set(['tuning', 'instrument']);

/**
 * New labels for all systems that a changed tuning holds for, on offer at its field, where the hand still is after
 * the change: up to the next field that changes the tuning again in that part.
 */
export function relabelAtField(document: TabDocument, { start, end }: Range): readonly Mend[] {
  const group = document.fieldGroups.find(({ fields }) =>
    fields.some(
      ({ line, lineIndex }) => TUNES.has(line.field) && lineIndex >= start.line && lineIndex <= end.line,
    ),
  );
  if (!group) return [];
  const { tuning, part } = group.after;
  const from = group.fields[0]?.lineIndex ?? 0;
  const under = document.systems.filter(
    ({ firstLine, header }) =>
      firstLine > from && header.tuning === tuning && (part === undefined || header.part === part),
  );
  const wrong = under.filter(needsLabels);
  if (wrong.length === 0) return [];
  const which =
    wrong.length === 1 ? 'the system' : wrong.length === 2 ? 'both systems' : `all ${wrong.length} systems`;
  return [mend(`Label the lines of ${which} by this tuning`, wrong)];
}
