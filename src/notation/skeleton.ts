import type { Header } from './header';
import { DEFAULT_HEADER, readFields, type GroupReading } from './headers';
import { labelAgrees } from './labels';
import type { FieldLine, ParsedLine, StringLine } from './parsedLine';
import { PlacedSystem } from './placedSystem';
import type { FieldGroup, PlacedField, Section } from './tabDocument';

/** What the lines of a document are together: its fields, sections and systems. */
export interface Skeleton {
  readonly systems: PlacedSystem[];
  readonly sections: readonly Section[];
  readonly groups: readonly FieldGroup[];
  /** Headers by the line they hold from, in order. */
  readonly headers: readonly { readonly line: number; readonly header: Header }[];
  readonly parts: readonly (string | undefined)[];
  /** The most strings that a tuning of each part has. */
  readonly mostStrings: ReadonlyMap<string | undefined, number>;
  /** Lines outside all systems that were nearly something else, in order. */
  readonly nearMisses: readonly number[];
}

/** Systems of the document before an edit, by the line they stand on now; they are used again where nothing changed. */
export type KnownSystems = ReadonlyMap<number, PlacedSystem>;

/** Reads all lines of a document. Systems that did not change are taken over as they are. */
export function buildSkeleton(
  lines: readonly ParsedLine[],
  userTunings: Readonly<Record<string, string>>,
  known: KnownSystems,
  memory: GroupMemory,
): Skeleton {
  return new Builder(lines, userTunings, known, memory).build();
}

/** Field groups remembered by what held before and by their text, so that unchanged fields give the same header record. */
export type GroupMemory = WeakMap<Header, Map<string, RememberedGroup>>;

interface RememberedGroup {
  readonly fields: readonly PlacedField[];
  readonly read: GroupReading;
}

class Builder {
  private readonly systems: PlacedSystem[] = [];
  private readonly sections: Section[] = [];
  private readonly groups: FieldGroup[] = [];
  private readonly headers: { line: number; header: Header }[] = [];
  private readonly parts: (string | undefined)[] = [];
  private readonly mostStrings = new Map<string | undefined, number>();
  private readonly nearMisses: number[] = [];
  /** Where each part was left. */
  private readonly partHeaders = new Map<string | undefined, Header>();
  private readonly startedParts = new Set<string | undefined>();
  /** Parts that already have a system below the current heading. */
  private startedInSection = new Set<string | undefined>();
  private base: Header = DEFAULT_HEADER;
  private header: Header = DEFAULT_HEADER;
  private section: Section | undefined;
  private pending: PlacedField[] = [];
  private pendingBefore: Header = DEFAULT_HEADER;

  constructor(
    private readonly lines: readonly ParsedLine[],
    private readonly userTunings: Readonly<Record<string, string>>,
    private readonly known: KnownSystems,
    private readonly memory: GroupMemory,
  ) {}

  build(): Skeleton {
    const { lines } = this;
    let runStart = -1;
    let runEnd = -1;
    for (let i = 0; i <= lines.length; i++) {
      const line = lines[i];
      switch (line?.kind) {
        case 'string':
        case 'row':
          if (runStart < 0) runStart = i;
          runEnd = i;
          continue;
        case 'comment':
          continue;
        default:
          if (runStart >= 0) this.run(runStart, runEnd + 1);
          runStart = -1;
          if (line?.kind === 'section') this.heading(line, i);
          else if (line?.kind === 'field') this.field(line, i);
          else if (line && isNearMiss(line)) this.nearMisses.push(i);
      }
    }
    this.closeGroup();
    const { systems, sections, groups, headers, mostStrings, nearMisses } = this;
    const parts = this.parts.length > 0 ? this.parts : [undefined];
    return { systems, sections, groups, headers, parts, mostStrings, nearMisses };
  }

  private heading(line: Extract<ParsedLine, { kind: 'section' }>, at: number): void {
    this.section = { line: at, name: line.name, times: line.times };
    this.sections.push(this.section);
    this.startedInSection = new Set();
  }

  private field(line: FieldLine, at: number): void {
    if (line.field === 'part') this.enterPart(line.value);
    if (this.pending.length === 0) this.pendingBefore = this.header;
    this.pending.push({ lineIndex: at, line });
  }

  /** A new name starts a part with the fields that stood before the first one; a name met before goes on where it was left. */
  private enterPart(name: string): void {
    this.closeGroup();
    if (this.header.part === undefined) this.base = this.header;
    this.partHeaders.set(this.header.part, this.header);
    this.header = this.partHeaders.get(name) ?? this.base;
  }

  private closeGroup(): void {
    const [first] = this.pending;
    if (!first) return;
    const fields = this.pending;
    this.pending = [];
    const read = this.readGroup(fields);
    this.header = read.after;
    this.groups.push({ fields, before: this.pendingBefore, after: read.after, problems: read.problems });
    this.headers.push({ line: first.lineIndex, header: read.after });
  }

  private readGroup(fields: readonly PlacedField[]): GroupReading {
    const text = fields.map(({ line }) => line.text).join('\n');
    let byText = this.memory.get(this.pendingBefore);
    if (!byText) this.memory.set(this.pendingBefore, (byText = new Map<string, RememberedGroup>()));
    const known = byText.get(text);
    if (known)
      return {
        after: known.read.after,
        problems: known.read.problems.map((p) => ({
          ...p,
          // By place, not by line: one line may stand there twice.
          field: fields[known.fields.indexOf(p.field)] ?? p.field,
        })),
      };
    const read = readFields(fields, this.pendingBefore, this.userTunings);
    byText.set(text, { fields, read });
    return read;
  }

  private run(start: number, end: number): void {
    const run = this.lines.slice(start, end);
    // A word before a bar line is no row by itself: a table in prose looks the same.
    if (run.every((line) => line.kind !== 'string' && !(line.kind === 'row' && line.row !== 'text'))) {
      run.forEach((line, i) => {
        if (isNearMiss(line)) this.nearMisses.push(start + i);
      });
      return;
    }
    this.closeGroup();
    let from = 0;
    for (const to of [...this.splits(run), run.length]) {
      this.system(start + from, run.slice(from, to));
      from = to;
    }
  }

  /** Where a run of twice the lines begins again: its labels start over. */
  private splits(run: readonly ParsedLine[]): number[] {
    const count = this.header.tuning.strings.length;
    const strings = run.flatMap((line, i): { line: StringLine; i: number }[] =>
      line.kind === 'string' ? [{ line, i }] : [],
    );
    if (strings.length <= count || strings.length % count !== 0) return [];
    const splits: number[] = [];
    for (let k = count; k < strings.length; k += count) {
      const again = strings.slice(k, k + count).every(({ line }, j) => sameLabel(line, strings[j]?.line));
      const fits = strings
        .slice(k, k + count)
        .every(({ line }, j) => labelAgrees(line.label, this.header.tuning, count - 1 - j));
      if (!again && !fits) return [];
      splits.push(rowsAbove(run, strings[k]?.i ?? 0));
    }
    return splits;
  }

  private system(firstLine: number, lines: readonly ParsedLine[]): void {
    const { header, section } = this;
    const position = {
      firstInPart: !this.startedParts.has(header.part),
      firstInSection: !this.startedInSection.has(header.part),
    };
    if (position.firstInPart) this.parts.push(header.part);
    const most = this.mostStrings.get(header.part) ?? 0;
    this.mostStrings.set(header.part, Math.max(most, header.tuning.strings.length));
    this.startedParts.add(header.part);
    this.startedInSection.add(header.part);
    const known = this.known.get(firstLine);
    if (known?.isLike(lines, header, section, position)) {
      known.firstLine = firstLine;
      known.section = section;
      this.systems.push(known);
      return;
    }
    this.systems.push(
      new PlacedSystem(firstLine, lines, header, section, position.firstInPart, position.firstInSection),
    );
  }
}

/** Whether a line outside all systems was nearly something else. */
export function isNearMiss(line: ParsedLine): boolean {
  return (
    (line.kind === 'prose' && line.nearMiss !== undefined) ||
    (line.kind === 'row' && line.nearRow !== undefined)
  );
}

function sameLabel(a: StringLine, b: StringLine | undefined): boolean {
  return a.label.text.toLowerCase() === b?.label.text.toLowerCase();
}

/** The first of the count and chord rows that stand right above a line. */
function rowsAbove(run: readonly ParsedLine[], at: number): number {
  let first = at;
  for (let i = at - 1; i >= 0; i--) {
    const line = run[i];
    if (line?.kind === 'comment') continue;
    if (line?.kind !== 'row' || (line.row !== 'count' && line.row !== 'chords')) break;
    first = i;
  }
  return first;
}
