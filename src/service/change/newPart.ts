import type { Header } from '../../notation/header';
import type { System, TabDocument, TextEdit } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { Change, Report } from '../serviceApi';
import { cannotBeWritten, namesOldFingers, OLD_FINGERS, type Attempt } from './change';
import { editTo } from './edits';
import { stateFields } from './fieldsInForce';
import { fieldLine, valueColumn } from './fieldText';
import { keyOf, rewriteSlices, type Replacement, type Rewriting } from './rewrite';
import { notesOf, type Slice } from './slices';

/**
 * Puts what a passage becomes into a part of its own under the original: under each stretch of systems of the original
 * the same systems with the same bars, empty outside the passage, so that both parts count the same bars.
 */
export function changeInNewPart(
  document: TabDocument,
  slices: readonly Slice[],
  wanted: string,
  rewriting: Rewriting,
  report: (unwritten: ReadonlySet<string>) => Report,
  settings: Settings,
): Attempt {
  const name = wanted.trim();
  const parts = [...new Set(slices.map(({ system }) => system.header.part))];
  const [part] = parts;
  const trouble = nameTrouble(document, name, parts.length);
  if (trouble) return { error: trouble };
  const whole = document.systems.flatMap((system, index): Slice[] => {
    const { bars } = system.reading;
    return system.header.part === part && bars.length > 0
      ? [{ system, index, firstBar: 0, lastBar: bars.length - 1 }]
      : [];
  });
  const inside = new Set(slices.flatMap((slice) => notesOf(slice).map(({ index }) => keyOf(slice, index))));
  const within = <T>(choose: ((slice: Slice, index: number) => T | undefined) | undefined) => {
    return (slice: Slice, index: number): T | undefined =>
      inside.has(keyOf(slice, index)) ? choose?.(slice, index) : undefined;
  };
  const there: Rewriting = {
    ...rewriting,
    place: within(rewriting.place),
    omitted: within(rewriting.omitted),
  };
  const result = rewriteSlices(whole, there);
  if (!result.ok) return { error: cannotBeWritten(document.placeOf(result.slice.system).firstBar) };
  const { edits, remark } = withNewPart(document, part, name, result.replacements, settings);
  const { remarks, ...counts } = report(result.unwritten);
  const more = [remark, ...(namesOldFingers(slices, rewriting) ? [OLD_FINGERS] : [])];
  return { edits, report: { ...counts, remarks: [...remarks, ...more] } } satisfies Change;
}

/**
 * Puts blocks, one or more for each system of a part, under that part's own systems as a part of a new name.
 * @param name as `nameTrouble` lets it pass
 */
export function withNewPart(
  document: TabDocument,
  part: string | undefined,
  name: string,
  replacements: readonly Replacement[],
  settings: Settings,
): { readonly edits: readonly TextEdit[]; readonly remark: string } {
  const original = part ?? originalName(document, name);
  const { lines, required } = new Writer(document, part, original, name, replacements).write();
  const remark =
    part === undefined
      ? `The original stays, as part ${original}; what it becomes stands under it as part ${name}.`
      : `The original stays; what it becomes stands under it as part ${name}.`;
  return { edits: editTo(document, stateFields(lines, required, settings.tunings)), remark };
}

/** Why a name will not do for a new part of a passage that holds so many parts; undefined when it will. */
export function nameTrouble({ parts }: TabDocument, name: string, count: number): string | undefined {
  if (name === '' || /[\r\n]/.test(name))
    return 'Give the new part a name on one line, such as second guitar.';
  if (parts.includes(name)) return `There is a part ${name} already; give the new part another name.`;
  return count > 1
    ? 'The passage holds several parts; choose a passage of one of them for the new part.'
    : undefined;
}

/** A name for what had none, after its instrument. */
function originalName({ parts, systems }: TabDocument, name: string): string {
  const instrument = systems[0]?.header.instrument.name ?? 'original';
  const taken = [...parts, name];
  for (let count = 1; ; count++) {
    const one = count === 1 ? instrument : `${instrument} ${count}`;
    if (!taken.includes(one)) return one;
  }
}

/** Writes a document's lines with those of the new part between them. */
class Writer {
  private readonly lines: string[] = [];
  private readonly required = new Map<number, Header>();
  private readonly starts: ReadonlyMap<number, System>;
  private readonly replacements: ReadonlyMap<System, Replacement>;
  private readonly column: number;
  /** Whether lines put down now would belong to the new part. */
  private inNew = false;

  constructor(
    private readonly document: TabDocument,
    private readonly part: string | undefined,
    private readonly original: string,
    private readonly name: string,
    replacements: readonly Replacement[],
  ) {
    this.starts = new Map(document.systems.map((system) => [system.firstLine, system]));
    this.replacements = new Map(replacements.map((replacement) => [replacement.system, replacement]));
    this.column = valueColumn(document.fieldGroups[0]);
  }

  write(): { readonly lines: string[]; readonly required: ReadonlyMap<number, Header> } {
    const naming = this.part === undefined ? this.lineOfFirstPart() : -1;
    const ends = this.endsOfRuns();
    for (let i = 0; i < this.document.lineCount; i++) {
      if (i === naming) this.startPart(this.original, this.document.line(i).kind !== 'blank');
      const line = this.document.line(i);
      const system = this.starts.get(i);
      if (this.inNew && line.kind === 'field' && line.field === 'part') this.inNew = false;
      if (this.inNew && (line.kind === 'field' || system))
        this.startPart(this.original, system !== undefined);
      if (system) this.required.set(this.lines.length, this.underPart(system.header, this.original));
      this.lines.push(line.text);
      const run = ends.get(i);
      if (run) this.putNew(run);
    }
    return { lines: this.lines, required: this.required };
  }

  private underPart(header: Header, name: string): Header {
    return header.part === this.part ? { ...header, part: name } : header;
  }

  /** Behind the fields above the first system, or right before it. */
  private lineOfFirstPart(): number {
    const first = this.document.systems[0]?.firstLine ?? 0;
    const group = this.document.fieldGroups.findLast(
      ({ fields }) => (fields.at(-1)?.lineIndex ?? Infinity) < first,
    );
    const last = group?.fields.at(-1)?.lineIndex;
    return last === undefined ? first : last + 1;
  }

  private startPart(name: string, blankAfter: boolean): void {
    this.lines.push(fieldLine('part', name, this.column));
    if (blankAfter) this.lines.push('');
    this.inNew = false;
  }

  /** The systems of the part in stretches that nothing of another part and no heading divides, by their last lines. */
  private endsOfRuns(): ReadonlyMap<number, readonly System[]> {
    const runs: System[][] = [];
    let open: System[] | undefined;
    for (const system of this.document.systems) {
      if (system.header.part !== this.part) {
        open = undefined;
        continue;
      }
      if (open && open[0]?.section === system.section) open.push(system);
      else runs.push((open = [system]));
    }
    return new Map(
      runs.map((run) => {
        const last = run.at(-1);
        return [(last?.firstLine ?? 0) + (last?.lines.length ?? 1) - 1, run];
      }),
    );
  }

  private putNew(run: readonly System[]): void {
    this.lines.push('', fieldLine('part', this.name, this.column));
    for (const system of run) {
      for (const block of this.replacements.get(system)?.blocks ?? []) {
        this.lines.push('');
        this.required.set(this.lines.length, { ...block.header, part: this.name });
        this.lines.push(...block.lines);
      }
    }
    this.inNew = true;
  }
}
