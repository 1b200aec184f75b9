import { INSTRUMENTS } from './instruments';
import type { Instrument } from './instrument';
import { nameKey } from './nameMatching';
import { formatNoteList, readNoteList } from './noteList';
import { retune } from './retune';
import { stringsFromNotes, usualStrings } from './stringsFromNotes';
import type { TuningString } from './tuning';
import { TUNING_ROWS, type TuningRow } from './tuningNames';

/** A tuning that has a name on an instrument. */
export interface NamedTuning extends TuningRow {
  /** The instrument's name. */
  readonly instrument: string;
  /** Low string first, with the instrument's courses and short strings. */
  readonly strings: readonly TuningString[];
}

interface Shelf {
  readonly tunings: readonly NamedTuning[];
  readonly byKey: ReadonlyMap<string, NamedTuning>;
}

const SHELVES = new WeakMap<Instrument, Shelf>();

/**
 * The tunings that have a name on the instrument, its usual one first. `half step down` and `whole step down` are
 * known on every instrument.
 */
export function tuningsFor(instrument: Instrument): readonly NamedTuning[] {
  return shelfOf(instrument).tunings;
}

/**
 * The tuning of that name or alias on the instrument. Case, hyphens and spaces do not count, nor does the word
 * “tuning” at the end.
 * @example findTuning('OPEN-G', GUITAR)?.notes // 'D2 G2 D3 G3 B3 D4'
 */
export function findTuning(name: string, instrument: Instrument): NamedTuning | undefined {
  const { byKey } = shelfOf(instrument);
  const key = nameKey(name);
  return byKey.get(key) ?? byKey.get(key.replace(/tuning$/, ''));
}

/** Every named tuning of every instrument. */
export function allTunings(): readonly NamedTuning[] {
  return INSTRUMENTS.flatMap(tuningsFor);
}

function shelfOf(instrument: Instrument): Shelf {
  let shelf = SHELVES.get(instrument);
  if (shelf === undefined) SHELVES.set(instrument, (shelf = fillShelf(instrument)));
  return shelf;
}

function fillShelf(instrument: Instrument): Shelf {
  const rows = TUNING_ROWS[instrument.name] ?? [usualRow(instrument)];
  const tunings: NamedTuning[] = rows.map((row) => new RowTuning(row, instrument));
  const byKey = new Map<string, NamedTuning>();
  for (const tuning of tunings) addTo(byKey, tuning);
  for (const [name, steps] of [
    ['half step down', -1],
    ['whole step down', -2],
  ] as const) {
    if (byKey.has(nameKey(name))) continue;
    const usual = usualStrings(instrument);
    const strings = retune(
      usual,
      usual.map(() => steps),
    );
    const notes = formatNoteList(strings);
    const same = tunings.find((other) => formatNoteList(other.strings) === notes);
    if (same) {
      byKey.set(nameKey(name), same);
      continue;
    }
    const tuning = { name, aliases: [], notes, remark: undefined, instrument: instrument.name, strings };
    tunings.push(tuning);
    addTo(byKey, tuning);
  }
  return { tunings, byKey };
}

/** A name comes before another tuning's alias. */
function addTo(byKey: Map<string, NamedTuning>, tuning: NamedTuning): void {
  byKey.set(nameKey(tuning.name), tuning);
  for (const alias of tuning.aliases) {
    const key = nameKey(alias);
    if (!byKey.has(key)) byKey.set(key, tuning);
  }
}

/** A row of the table. Its strings are read when they are asked for: a document has use for one or two of them. */
class RowTuning implements NamedTuning {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly notes: string;
  readonly remark: string | undefined;
  readonly instrument: string;
  private read: readonly TuningString[] | undefined;

  constructor(
    row: TuningRow,
    private readonly owner: Instrument,
  ) {
    this.name = row.name;
    this.aliases = row.aliases;
    this.notes = row.notes;
    this.remark = row.remark;
    this.instrument = owner.name;
  }

  get strings(): readonly TuningString[] {
    return (this.read ??= this.readStrings());
  }

  private readStrings(): readonly TuningString[] {
    const list = readNoteList(this.notes, 0, this.owner.firstFrets.length);
    return stringsFromNotes(list.strings, this.owner, usualStrings(this.owner));
  }
}

/** For an instrument that the table does not hold: nothing but its usual tuning. */
function usualRow(instrument: Instrument): TuningRow {
  return { name: 'standard', aliases: [], notes: instrument.usualTuning, remark: undefined };
}
