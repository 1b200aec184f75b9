import { formatCapo } from '../../instrument/capo';
import { formatGauges } from '../../instrument/gauges';
import { formatTuning, sameTuning } from '../../instrument/tuningFormat';
import { formatKey } from '../../music/key';
import { Document } from '../../notation/document';
import type { Header } from '../../notation/header';
import type { FieldGroup, System } from '../../notation/tabDocument';
import { fieldSources, type FieldSource, type StatedName } from './fieldSources';
import { fieldLine, keyLike, valueColumn, valueOf, withValue } from './fieldText';

/** A field that a change of a passage may have to state: before the passage, and again after it. */
interface StatedField {
  readonly name: StatedName;
  readonly same: (a: Header, b: Header) => boolean;
  /** The value as text, in the style of another one; undefined when nothing can be written that says it. */
  readonly value: (header: Header, style: string) => string | undefined;
}

/** In the order in which they are to be written; a capo depends on the tuning. */
const STATED: readonly StatedField[] = [
  {
    name: 'instrument',
    same: (a, b) => a.instrument === b.instrument,
    value: ({ instrument }) => instrument.name,
  },
  { name: 'frets', same: (a, b) => a.frets === b.frets, value: ({ frets }) => String(frets) },
  { name: 'tuning', same: (a, b) => sameTuning(a.tuning, b.tuning), value: tuningText },
  {
    name: 'capo',
    same: (a, b) => formatCapo(a.capo) === formatCapo(b.capo),
    value: (header) => formatCapo(header.capo),
  },
  {
    name: 'key',
    same: (a, b) => (a.key && formatKey(a.key)) === (b.key && formatKey(b.key)),
    value: (header, style) => header.key && keyLike(header.key, style),
  },
  {
    name: 'scale length',
    same: (a, b) => a.scaleLength === b.scaleLength,
    value: ({ scaleLength }) => `${scaleLength} mm`,
  },
  {
    name: 'gauges',
    // None are wanted where those that are written do not fit the new strings.
    same: (a, b) => b.gauges === undefined || gaugesText(a) === gaugesText(b),
    value: gaugesText,
  },
  {
    name: 'meter',
    same: (a, b) => meterText(a) === meterText(b),
    value: meterText,
  },
  { name: 'tempo', same: (a, b) => a.tempo.text === b.tempo.text, value: ({ tempo }) => tempo.text },
  { name: 'feel', same: (a, b) => a.feel === b.feel, value: ({ feel }) => feel },
  { name: 'fretting', same: (a, b) => a.fretting === b.fretting, value: ({ fretting }) => fretting },
];

function gaugesText({ gauges }: Header): string | undefined {
  return gauges && formatGauges(gauges);
}

function meterText({ meter }: Header): string {
  return `${meter.upper}/${meter.lower}`;
}

/** Whether two places need no field stated between them. */
export function sameFields(a: Header, b: Header): boolean {
  return a === b || STATED.every(({ same }) => same(a, b));
}

/** A tuning as it was written, when that still says it. */
function tuningText({ tuning, instrument }: Header): string {
  return tuning.text === '' || tuning.text === instrument.usualTuning
    ? formatTuning(tuning, instrument)
    : tuning.text;
}

/**
 * Sees to it that each system stands under the fields it must: a field line all of whose systems change alike is
 * rewritten where it stands; elsewhere the field is stated before the passage and the old value again after it.
 * @param lines the new lines of the document
 * @param required for the line each system begins on, the header it must have
 */
export function stateFields(
  lines: readonly string[],
  required: ReadonlyMap<number, Header>,
  userTunings: Readonly<Record<string, string>>,
): string[] {
  let stated: Stated = { lines: [...lines], required: new Map(required) };
  // One round states everything; another is needed where one field hangs on another, as a capo on the number of strings.
  for (let round = 0; round <= STATED.length; round++) {
    const plan = new Plan(new Document(stated.lines.join('\n'), userTunings), stated);
    if (plan.isEmpty()) break;
    stated = plan.carryOut();
  }
  return stated.lines;
}

interface Stated {
  readonly lines: string[];
  readonly required: Map<number, Header>;
}

interface Insertion {
  readonly field: StatedField;
  readonly value: string;
  readonly group: FieldGroup | undefined;
}

/** What is to be written in one round. */
class Plan {
  private readonly replacements = new Map<number, string>();
  private readonly insertions = new Map<number, Insertion[]>();
  private readonly sources: ReadonlyMap<System, FieldSource>;

  constructor(
    private readonly document: Document,
    private readonly before: Stated,
  ) {
    this.sources = fieldSources(document);
    for (const field of STATED) {
      const changed = document.systems.filter((system) => !field.same(system.header, this.wanted(system)));
      if (changed.length === 0) continue;
      this.state(field);
      // What else is to be stated shows when the document is read with its new instrument.
      if (field.name === 'instrument') return;
    }
  }

  isEmpty(): boolean {
    return this.replacements.size === 0 && this.insertions.size === 0;
  }

  private wanted(system: System): Header {
    return this.before.required.get(system.firstLine) ?? system.header;
  }

  private sourceOf(system: System, { name }: StatedField): number | undefined {
    return this.sources.get(system)?.[name];
  }

  private state(field: StatedField): void {
    const rewritten = this.rewriteLines(field);
    // What holds in a part as far as has been written, and the line that said it.
    const holds = new Map<string | undefined, { header: Header; source: number | undefined }>();
    for (const system of this.document.systems) {
      const { part } = system.header;
      const wanted = this.wanted(system);
      const source = this.sourceOf(system, field);
      const current = holds.get(part) ?? holds.get(undefined);
      let header = current?.source === source ? current?.header : undefined;
      header ??= (source === undefined ? undefined : rewritten.get(source)) ?? system.header;
      if (!field.same(header, wanted) && this.stateBefore(field, system, wanted)) header = wanted;
      holds.set(part, { header, source });
    }
  }

  /** Rewrites the lines of a field all of whose systems are to change alike; tells what they say now. */
  private rewriteLines(field: StatedField): Map<number, Header> {
    const users = new Map<number, System[]>();
    for (const system of this.document.systems) {
      const source = this.sourceOf(system, field);
      if (source === undefined) continue;
      const list = users.get(source);
      if (list) list.push(system);
      else users.set(source, [system]);
    }
    const rewritten = new Map<number, Header>();
    for (const [line, systems] of users) {
      const [first] = systems;
      const wanted = first && this.wanted(first);
      if (!wanted || !systems.every((system) => field.same(this.wanted(system), wanted))) continue;
      if (systems.every((system) => field.same(system.header, wanted))) continue;
      const value = field.value(wanted, this.valueAt(line));
      if (value === undefined) continue;
      this.replacements.set(line, value);
      rewritten.set(line, wanted);
    }
    return rewritten;
  }

  private valueAt(line: number | undefined): string {
    return line === undefined ? '' : valueOf(this.before.lines[line] ?? '');
  }

  /** States a field for a system and those after it; tells whether that could be done. */
  private stateBefore(field: StatedField, system: System, wanted: Header): boolean {
    const style = this.valueAt(this.sourceOf(system, field));
    // A value stated again is written as it was.
    const again = style !== '' && field.same(system.header, wanted);
    const value = again ? style : field.value(wanted, style);
    if (value === undefined) return false;
    const group = this.ownGroup(system, wanted);
    const own = group?.fields.findLast(({ line }) => line.field === field.name);
    if (own) {
      this.replacements.set(own.lineIndex, value);
      return true;
    }
    const at = (group?.fields.at(-1)?.lineIndex ?? system.firstLine - 1) + 1;
    const list = this.insertions.get(at);
    const insertion = { field, value, group };
    if (list) list.push(insertion);
    else this.insertions.set(at, [insertion]);
    return true;
  }

  /** The fields right above a system that no earlier system of its part hangs on. */
  private ownGroup(system: System, { part }: Header): FieldGroup | undefined {
    const group = this.document.fieldGroups.findLast(
      ({ fields }) => (fields[0]?.lineIndex ?? Infinity) < system.firstLine,
    );
    const start = group?.fields[0]?.lineIndex ?? 0;
    const shared = this.document.systems.some(
      (other) => other.firstLine < system.firstLine && other.firstLine > start && other.header.part === part,
    );
    return group && group.after.part === part && !shared ? group : undefined;
  }

  carryOut(): Stated {
    const lines: string[] = [];
    const required = new Map<number, Header>();
    this.before.lines.forEach((line, i) => {
      for (const inserted of this.insertedAt(i)) lines.push(inserted);
      const header = this.before.required.get(i);
      if (header) required.set(lines.length, header);
      const value = this.replacements.get(i);
      lines.push(value === undefined ? line : withValue(line, value));
    });
    return { lines, required };
  }

  private insertedAt(line: number): string[] {
    const insertions = this.insertions.get(line) ?? [];
    const [first] = insertions;
    if (!first) return [];
    // Fields of their own line up with each other where the document's first fields do.
    const column = first.group
      ? valueColumn(first.group)
      : insertions.length > 1 && valueColumn(this.document.fieldGroups[0]) > 0
        ? Math.max(...insertions.map(({ field }) => field.name.length + 2))
        : 0;
    return insertions.map(({ field, value }) => fieldLine(field.name, value, column));
  }
}
