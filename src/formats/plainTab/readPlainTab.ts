import { findInstrument } from '../../instrument/instruments';
import { Document } from '../../notation/document';
import { parseLine } from '../../notation/parseLine';
import { firstInstrument, readClaims, type Claims } from './claims';
import { fieldsBetween, NOTHING_STATED, type InForce } from './fieldsBetween';
import { Guesses } from './guessWords';
import type { ImportAnswer } from './importAnswer';
import { readLegend, type Legend } from './legend';
import { plainLines, type PlainLine } from './plainLines';
import { plainSystems, type PlainSystem } from './plainSystems';
import { bendAmounts, plainRow, type BendAmount, type PlainRow } from './rowsBeside';
import type { Given, Setting } from './setting';
import { SettingSearch } from './settingSearch';
import { stringCandidate } from './stringCandidate';
import { settle, systemLines } from './writeSystem';

/** How a plain tab is to be read. */
export interface ImportOptions {
  /** Name of the instrument, where the caller knows it; an unknown name is passed over. */
  readonly instrument?: string | undefined;
  /** As it would stand in `tuning:`; one that cannot be read is passed over. */
  readonly tuning?: string | undefined;
  /** The user's own tunings: name and value. */
  readonly settings: { readonly tunings: Readonly<Record<string, string>> };
  /** The fields in force where the text is to stand: they are not stated again. */
  readonly inForce?: InForce | undefined;
}

/** An answer with what is in force at its end. */
export interface PlainTabReading extends ImportAnswer {
  readonly ends: InForce;
}

/**
 * Reads any plain tab as a document of the notation: with or without labels, words around it, ragged lines, other
 * signs for slides, bends and repeats, upside down. Whatever is not understood stays in the text as it is; a text
 * without tab comes back unchanged. Never fails; takes time in step with the length of the text.
 * @example readPlainTab('e|-0-|\nB|-1-|\nG|-0-|\nD|-2-|\nA|-3-|\nD|---|', { settings }).fields // ['tuning: drop D']
 */
export function readPlainTab(text: string, options: ImportOptions): PlainTabReading {
  const lines = plainLines(text, (columns) => stringCandidate(columns, 0) !== undefined);
  const asItIs = {
    text,
    fields: [],
    body: text,
    guesses: [],
    kept: lines.map(({ index }) => index),
    systems: 0,
    ends: options.inForce ?? NOTHING_STATED,
  };
  // A text with parts is a tab of the notation already.
  if (lines.some((line) => /^\s*part\s*:/i.test(line.text))) return asItIs;
  return new Reader(lines, options).read() ?? asItIs;
}

/** A system with what stands beside it. */
interface Beside {
  readonly system: PlainSystem;
  readonly over: readonly { readonly row: PlainRow; readonly line: number }[];
  readonly amounts: readonly BendAmount[];
}

/** Lines over a staff that may belong to it. */
const MOST_ROWS = 6;

class Reader {
  private readonly given: Given;
  private readonly guesses = new Guesses();
  private readonly out: string[] = [];
  private readonly kept: number[] = [];
  /** Lines that went into a system, a row or a field. */
  private readonly taken = new Set<number>();
  private fields: readonly string[] = [];
  private now: InForce;
  private written = 0;
  /** The line that said the meter last. */
  private meter: readonly string[] = [];

  constructor(
    private readonly lines: readonly PlainLine[],
    options: ImportOptions,
  ) {
    const { instrument, tuning, settings } = options;
    this.given = {
      instrument: instrument === undefined ? undefined : findInstrument(instrument),
      tuning,
      userTunings: settings.tunings,
      inForce: options.inForce,
    };
    this.now = options.inForce ?? NOTHING_STATED;
  }

  read(): PlainTabReading | undefined {
    const { lines } = this;
    const named = this.given.instrument ?? firstInstrument(this.prose([]));
    const systems = plainSystems(lines, named?.firstFrets.length);
    if (systems.length === 0) return undefined;
    for (const { strings } of systems) for (const { line } of strings) this.taken.add(line);
    const prose = this.prose(systems);
    const claims = readClaims(prose);
    const legend = readLegend(
      prose.map(({ columns }) => columns),
      systems.flatMap(({ strings }) => strings.map(({ run }) => run)),
    );
    this.takeFences();
    this.write(systems, claims, legend);
    if (this.written === 0) return undefined;
    const body = this.out.join('\n');
    const gap = this.fields.length > 0 && parseLine(this.out[0] ?? '').kind !== 'field' ? [''] : [];
    return {
      text: [...this.fields, ...gap, body].join('\n'),
      fields: this.fields,
      body,
      guesses: this.guesses.all(),
      kept: this.kept,
      systems: this.written,
      ends: this.now,
    };
  }

  private prose(systems: readonly PlainSystem[]): PlainLine[] {
    if (systems.length === 0) return this.lines.filter(({ columns }) => !stringCandidate(columns, 0));
    return this.lines.filter(({ index }) => !this.taken.has(index));
  }

  /** The fences of a page go where tab stands between them: the tab is a text of its own now. */
  private takeFences(): void {
    let open: number | undefined;
    let holds = false;
    for (const { index, columns } of this.lines) {
      holds ||= this.taken.has(index);
      if (!/^\s*(?:```|~~~)[^`]*$/.test(columns) || columns.length > 80 || /~{4}/.test(columns)) continue;
      if (open === undefined) holds = false;
      else if (holds) this.fences.add(open).add(index);
      open = open === undefined ? index : undefined;
    }
    for (const index of this.fences) this.taken.add(index);
  }

  private readonly fences = new Set<number>();

  private write(systems: readonly PlainSystem[], claims: Claims, legend: Legend): void {
    const most = systems.reduce((sum, { strings }) => Math.max(sum, strings.length), 0);
    const end = (systems.at(-1)?.strings.at(-1)?.line ?? 0) + 1;
    const search = new SettingSearch(claims, this.given, most, end);
    const settled = systems.map((system) => ({ ...this.beside(system), setting: search.of(system) }));
    for (const { setting } of settled) for (const line of setting.fieldLines) this.taken.add(line);
    let at = 0;
    for (const beside of settled) {
      const first = beside.system.strings[0]?.line ?? 0;
      this.keepLines(at, first);
      at = this.system(beside, legend);
    }
    this.keepLines(at, this.lines.length);
  }

  /** Rows over a staff, nearest last. */
  private beside(system: PlainSystem): Beside {
    const over: { row: PlainRow; line: number }[] = [];
    const amounts: BendAmount[] = [];
    const first = system.strings[0]?.line ?? 0;
    for (let at = first - 1; at >= Math.max(0, first - MOST_ROWS); at--) {
      const columns = this.lines[at]?.columns ?? '';
      if (this.taken.has(at) || columns.trim() === '') break;
      const here = bendAmounts(columns);
      amounts.push(...here);
      const row = here.length > 0 ? undefined : plainRow(columns, 'over', () => false);
      if (here.length === 0 && !row) break;
      if (!row) continue;
      over.unshift({ row, line: at });
      this.taken.add(at);
    }
    return { system, over, amounts };
  }

  /** Writes a system; gives the line of the text that follows it. */
  private system(
    { system, over, amounts, setting }: Beside & { readonly setting: Setting },
    legend: Legend,
  ): number {
    const first = system.strings[0]?.line ?? 0;
    const end = (system.strings.at(-1)?.line ?? 0) + 1;
    const settled = settle(system, setting, legend, amounts);
    const under: { row: PlainRow; line: number }[] = [];
    for (let at = end; at < end + MOST_ROWS && !this.taken.has(at); at++) {
      const row = plainRow(this.lines[at]?.columns ?? '', 'under', settled.onsets);
      if (!row) break;
      under.push({ row, line: at });
    }
    const rows = (list: readonly { row: PlainRow }[]): PlainRow[] => list.map(({ row }) => row);
    let written = systemLines(settled, rows(over), rows(under));
    if (!written.every((line) => ['string', 'row'].includes(parseLine(line).kind))) {
      this.keep(first - over.length, end);
      return end;
    }
    const wanted = this.wanted(setting);
    const fields = fieldsBetween(this.now, wanted);
    const counted = [...over, ...under].some(({ row }) => row.row === 'count');
    if (counted && !countFits([...this.meter, ...fieldsBetween(NOTHING_STATED, wanted), ...written])) {
      const loose = (list: typeof over): typeof over => list.filter(({ row }) => row.row === 'count');
      for (const { line } of loose(over)) this.keep(line, line + 1);
      written = systemLines(
        settled,
        rows(over.filter(({ row }) => row.row !== 'count')),
        rows(under.filter(({ row }) => row.row !== 'count')),
      );
      under.splice(0, under.length, ...under.filter(({ row }) => row.row !== 'count'));
    }
    for (const { line } of under) this.taken.add(line);
    this.guesses.addSetting(setting, system, this.given.inForce);
    this.guesses.add(settled.guesses, first);
    if (system.strings.some(({ line }) => this.lines[line]?.hasTabs)) this.guesses.add(['tabs'], first);
    if (this.written === 0) this.fields = fields;
    else if (fields.length > 0) this.put(['', ...fields]);
    this.now = wanted;
    if (belongsToSystem(this.out.at(-1))) this.out.push('');
    this.out.push(...written);
    this.written += 1;
    return end;
  }

  /** The fields a system asks for. A text that says nothing of a capo takes the one in force where it is pasted. */
  private wanted({ instrument, tuning, capo, capoBy }: Setting): InForce {
    const there = capoBy === 'nothing' ? this.given.inForce : undefined;
    const same = there?.instrument === instrument && there.tuning.strings.length === tuning.strings.length;
    return { instrument, tuning, capo: same ? there.capo : capo };
  }

  private put(lines: readonly string[]): void {
    const [first, ...more] = lines;
    this.out.push(...(first === '' && (this.out.at(-1) ?? '').trim() === '' ? more : lines));
  }

  /** Lines between systems, those that were taken apart. */
  private keepLines(from: number, to: number): void {
    for (let at = from; at < to; at++) if (!this.taken.has(at)) this.keep(at, at + 1);
  }

  private keep(from: number, to: number): void {
    for (let at = from; at < to; at++) {
      const { text, index } = this.lines[at] ?? { text: '', index: at };
      const line = asProse(text);
      if (belongsToSystem(this.out.at(-1)) && belongsToSystem(line)) this.out.push('');
      if (/^\s*(?:meter|time)\s*:/i.test(line)) this.meter = [line];
      this.out.push(line);
      this.kept.push(index);
    }
  }
}

/** Whether a line would be read with the system beside it. */
function belongsToSystem(line: string | undefined): boolean {
  return line !== undefined && line !== '' && ['string', 'row', 'comment'].includes(parseLine(line).kind);
}

/**
 * A line that stays as it is; behind a `#` where it would be taken for a field that says something else here, or whose
 * value cannot be read.
 */
function asProse(text: string): string {
  const parsed = parseLine(text);
  if (parsed.kind !== 'field') return text;
  const settled = parsed.field === 'instrument' || parsed.field === 'tuning' || parsed.field === 'capo';
  const malformed = new Document(text, {}).fieldGroups.some(({ problems }) =>
    problems.some(({ kind }) => kind === 'malformed'),
  );
  return settled || malformed ? `# ${text}` : text;
}

/** Whether the times that a count row gives can be read. */
function countFits(lines: readonly string[]): boolean {
  const [system] = new Document(lines.join('\n'), {}).systems;
  return system !== undefined && !system.reading.problems.some(({ kind }) => kind.startsWith('count'));
}
