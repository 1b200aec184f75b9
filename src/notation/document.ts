import { add, type Fraction, ZERO } from '../music/fraction';
import type { Header } from './header';
import { DEFAULT_HEADER } from './headers';
import { LineStore, type LineChange } from './lineStore';
import type { ParsedLine } from './parsedLine';
import { PlacedSystem } from './placedSystem';
import type { NoteReading } from './reading';
import { buildSkeleton, isNearMiss, type GroupMemory, type Skeleton } from './skeleton';
import type {
  FieldGroup,
  PartPlace,
  RingingNote,
  Section,
  System,
  TabDocument,
  TextEdit,
} from './tabDocument';

/** Where the systems before and including one leave their part. */
interface Milestone extends PartPlace {
  readonly nextBar: number;
  readonly nextOnset: Fraction;
}

/**
 * A document that follows edits. A key typed inside a system costs that line and that system; whatever changes how
 * lines belong together (fields, headings, line breaks) reads the lines of the file again, but only the systems it
 * touches.
 */
export class Document implements TabDocument {
  private readonly store: LineStore;
  private skeleton: Skeleton;
  private memory: GroupMemory = new WeakMap();
  /** One for each system from the first on, as far as they were asked for since the last edit. */
  private milestones: Milestone[] = [];
  private nearLines: readonly number[];

  constructor(
    text: string,
    private userTunings: Readonly<Record<string, string>> = {},
  ) {
    this.store = new LineStore(text);
    this.skeleton = buildSkeleton(this.store.lines, userTunings, new Map(), this.memory);
    this.nearLines = this.skeleton.nearMisses;
  }

  // ---- what it says

  get lineCount(): number {
    return this.store.count;
  }

  line(index: number): ParsedLine {
    return this.store.line(index);
  }

  text(): string {
    return this.store.text();
  }

  get systems(): readonly System[] {
    return this.skeleton.systems;
  }

  get sections(): readonly Section[] {
    return this.skeleton.sections;
  }

  get fieldGroups(): readonly FieldGroup[] {
    return this.skeleton.groups;
  }

  get nearMisses(): readonly number[] {
    return this.nearLines;
  }

  get parts(): readonly (string | undefined)[] {
    return this.skeleton.parts;
  }

  systemAt(line: number): System | undefined {
    const system = this.skeleton.systems[this.indexAt(line)];
    return system && line < system.firstLine + system.lines.length ? system : undefined;
  }

  headerAt(line: number): Header {
    const { headers } = this.skeleton;
    let low = 0;
    let high = headers.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((headers[middle]?.line ?? 0) <= line) low = middle + 1;
      else high = middle;
    }
    return headers[low - 1]?.header ?? DEFAULT_HEADER;
  }

  // ---- time

  placeOf(system: System): PartPlace {
    return this.milestone(this.indexOf(system));
  }

  private milestone(index: number): Milestone {
    for (let i = this.milestones.length; i <= index; i++) {
      const system = this.skeleton.systems[i];
      if (!system) break;
      const { part } = system.header;
      const before = this.lastOfPart(part, i);
      const { bars, length } = system.reading;
      const firstBar = before?.nextBar ?? (bars[0]?.pickup ? 0 : 1);
      const onset = before?.nextOnset ?? ZERO;
      this.milestones.push({
        part,
        firstBar,
        onset,
        nextBar: firstBar + bars.length,
        nextOnset: add(onset, length),
      });
    }
    return (
      this.milestones[index] ?? { part: undefined, firstBar: 1, onset: ZERO, nextBar: 1, nextOnset: ZERO }
    );
  }

  private lastOfPart(part: string | undefined, before: number): Milestone | undefined {
    for (let i = before - 1; i >= 0; i--) {
      if (this.milestones[i]?.part === part) return this.milestones[i];
    }
    return undefined;
  }

  ringingInto(system: System): readonly RingingNote[] {
    const ringing: RingingNote[] = [];
    const done = new Set<number>();
    const strings = system.header.tuning.strings.length;
    for (let i = this.indexOf(system) - 1; i >= 0 && done.size < strings; i--) {
      const earlier = this.skeleton.systems[i];
      if (!earlier || earlier.section !== system.section) break;
      if (earlier.header.part !== system.header.part) continue;
      const { notes, stops } = earlier.reading;
      for (const note of notes)
        if (note.ends === undefined && !done.has(note.string)) ringing.push({ system: earlier, note });
      // A note with an end, or a stop, shows that the string had its last word in this system.
      for (const note of notes) done.add(note.string);
      for (const stop of stops) done.add(stop.string);
    }
    return ringing.sort((a, b) => b.note.string - a.note.string);
  }

  endOf(system: System, note: NoteReading): Fraction {
    const start = this.placeOf(system).onset;
    if (note.ends) return add(start, note.ends);
    let end = add(start, system.reading.length);
    for (let i = this.indexOf(system) + 1; i < this.skeleton.systems.length; i++) {
      const later = this.skeleton.systems[i];
      if (!later || later.section !== system.section) break;
      if (later.header.part !== system.header.part) continue;
      const { notes, stops, length } = later.reading;
      const event = [...notes, ...stops].filter((e) => e.string === note.string).map((e) => e.onset);
      const [first] = event.sort((a, b) => a.n * b.d - b.n * a.d);
      const onset = this.milestone(i).onset;
      if (first) return add(onset, first);
      end = add(onset, length);
    }
    return end;
  }

  // ---- edits

  /** Applies edits in the order given, each to the text that the one before left. */
  edit(edits: readonly TextEdit[]): void {
    for (const edit of edits) {
      const change = this.store.replace(edit);
      if (!this.editInside(change)) this.rebuild(change.first, change.removed.length, change.inserted.length);
    }
  }

  /** Takes other tunings of the user's; values may mean something else now. */
  configure(userTunings: Readonly<Record<string, string>>): void {
    this.userTunings = userTunings;
    this.memory = new WeakMap();
    this.rebuild(0, 0, 0);
  }

  /** The cheap way: lines changed, but not how they belong together. Tells whether that was so. */
  private editInside({ first, removed, inserted }: LineChange): boolean {
    if (removed.length !== inserted.length) return false;
    const at = this.indexAt(first);
    const system = this.skeleton.systems[at];
    const inside = system !== undefined && first < system.firstLine + system.lines.length;
    for (let i = 0; i < removed.length; i++) {
      const [before, after] = [removed[i], inserted[i]];
      if (!before || !after || before.kind !== after.kind) return false;
      const free = !inside && (after.kind === 'prose' || after.kind === 'blank' || after.kind === 'comment');
      if (!free && !(inside && staysInSystem(before, after))) return false;
    }
    if (!inside) {
      this.renewNearLines(first, removed, inserted);
      return true;
    }
    if (first + removed.length > system.firstLine + system.lines.length) return false;
    const strings = system.lines.filter((line) => line.kind === 'string').length;
    // Longer runs are split by their labels, and rows alone hang on their words: read those again as a whole.
    if (strings === 0 || strings > system.header.tuning.strings.length || this.isSplit(at)) return false;
    const lines = [...system.lines];
    inserted.forEach((line, i) => (lines[first - system.firstLine + i] = line));
    const next = new PlacedSystem(
      system.firstLine,
      lines,
      system.header,
      system.section,
      system.firstInPart,
      system.firstInSection,
    );
    this.skeleton.systems[at] = next;
    this.milestones.length = Math.min(this.milestones.length, at);
    this.touchRinging(at);
    return true;
  }

  /** Prose took the place of prose: some of it may be nearly something else now, or no longer. */
  private renewNearLines(
    first: number,
    removed: readonly ParsedLine[],
    inserted: readonly ParsedLine[],
  ): void {
    if (!removed.some(isNearMiss) && !inserted.some(isNearMiss)) return;
    const end = first + inserted.length;
    this.nearLines = [
      ...this.nearLines.filter((line) => line < first),
      ...inserted.flatMap((line, i) => (isNearMiss(line) ? [first + i] : [])),
      ...this.nearLines.filter((line) => line >= end),
    ];
  }

  /** Whether a system stands right against another one, as the halves of a split run do. */
  private isSplit(at: number): boolean {
    const { systems } = this.skeleton;
    const [before, system, after] = [systems[at - 1], systems[at], systems[at + 1]];
    if (!system) return false;
    return (
      (before !== undefined && before.firstLine + before.lines.length === system.firstLine) ||
      (after !== undefined && system.firstLine + system.lines.length === after.firstLine)
    );
  }

  private rebuild(first: number, removed: number, inserted: number): void {
    const known = new Map<number, PlacedSystem>();
    for (const system of this.skeleton.systems) {
      const moved = system.firstLine >= first + removed;
      known.set(moved ? system.firstLine + inserted - removed : system.firstLine, system);
    }
    const before = this.skeleton.systems;
    const old = new Set(before);
    this.skeleton = buildSkeleton(this.store.lines, this.userTunings, known, this.memory);
    this.nearLines = this.skeleton.nearMisses;
    this.milestones = [];
    // What rings into a system that stayed may come from one that did not.
    this.skeleton.systems.forEach((system, i) => {
      if (!old.has(system)) this.touchRinging(i);
    });
    this.touchAfterGone(before);
  }

  /** What rang into later systems from one that is gone rings no more. */
  private touchAfterGone(before: readonly PlacedSystem[]): void {
    const { systems } = this.skeleton;
    const kept = new Set(systems);
    let next = 0;
    const touched = new Set<string | undefined>();
    for (const system of before) {
      if (kept.has(system)) {
        next = systems.indexOf(system, next) + 1;
        touched.clear();
      } else if (!touched.has(system.header.part)) {
        touched.add(system.header.part);
        this.touchPart(next, system.header.part);
      }
    }
  }

  /** Marks the systems of a part from an index on, up to the next heading, as far as anything can ring. */
  private touchPart(from: number, part: string | undefined): void {
    const { systems, mostStrings } = this.skeleton;
    const section = systems[from]?.section;
    const most = mostStrings.get(part) ?? 0;
    const struck = new Set<number>();
    for (let i = from; i < systems.length; i++) {
      const system = systems[i];
      if (!system || system.section !== section) return;
      if (system.header.part !== part) continue;
      system.ringVersion += 1;
      for (const { string } of system.reading.notes) struck.add(string);
      // Only when each string that any later system may ask for has had its last word does nothing ring on.
      if (struck.size >= most) return;
    }
  }

  /** Marks the systems that notes of one may ring into. */
  private touchRinging(at: number): void {
    const { systems } = this.skeleton;
    const from = systems[at];
    if (from && systems[at + 1]?.section === from.section) this.touchPart(at + 1, from.header.part);
  }

  private indexOf(system: System): number {
    const at = this.indexAt(system.firstLine);
    return this.skeleton.systems[at] === system ? at : -1;
  }

  /** Index of the last system that begins at or above a line; −1 when there is none. */
  private indexAt(line: number): number {
    const { systems } = this.skeleton;
    let low = 0;
    let high = systems.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((systems[middle]?.firstLine ?? 0) <= line) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }
}

/** Whether a line of a system may take another's place without a look at its neighbours. */
function staysInSystem(before: ParsedLine, after: ParsedLine): boolean {
  if (before.kind === 'row') return after.kind === 'row';
  return before.kind === 'string' || before.kind === 'comment';
}
