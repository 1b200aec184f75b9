import { formatCapo } from '../../instrument/capo';
import { formatTuning } from '../../instrument/tuningFormat';
import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { formatKey } from '../../music/key';
import type { Header } from '../../notation/header';
import { capoShift, soundingSpelling } from '../../notation/headerViews';
import type { System, TabDocument } from '../../notation/tabDocument';
import { slicesIn, type Slice } from '../change/slices';
import { stringsInKey, stringsOverChord } from './openStrings';
import type { RingingAnswer, RingingChord, RingingKey, RingingRequest } from './ringingAnswer';
import { ringWords } from './ringWords';

/**
 * Which open strings may ring over the key and over every chord that is written, in the part at a place, in a range or
 * in the whole file. Chords are judged as they are named, under a full capo as played. Strings as they sound stand
 * beside.
 * @example ringing(document, { place }).chords[0].words // 'Strings 6, 4 and 1 may ring (root, …'
 */
export function ringing(document: TabDocument, request: RingingRequest): RingingAnswer {
  const slices = slicesOf(document, request);
  const several = new Set(slices.map(({ system }) => system.header.part)).size > 1;
  const keys = new Map<string, RingingKey>();
  const chords = new Map<string, Gathered>();
  const unread = new Set<string>();
  for (const slice of slices) {
    const { header } = slice.system;
    const under = placeText(header);
    if (header.key) {
      const name = formatKey(header.key);
      const id = `${name}\n${under}`;
      if (!keys.has(id)) keys.set(id, overKey(header, name, under));
    }
    for (const { text, bar } of chordsIn(document, slice)) {
      const key = header.key ? formatKey(header.key) : '';
      const id = `${text}\n${key}\n${under}`;
      const known = chords.get(id);
      if (known) known.meet(header.part, bar);
      else {
        const read = readChordName(text);
        if (!read.ok) unread.add(text);
        const strings = read.ok ? stringsOverChord(header, read.value) : undefined;
        if (!strings) continue;
        const sounds = capoShift(header) === 0 ? null : soundingName(header, text);
        const over = { name: text, sounds, tuning: under, strings, words: ringWords(strings) };
        chords.set(id, new Gathered(over, header.part, bar));
      }
    }
  }
  return {
    title: titleOf(document, request, slices),
    keys: [...keys.values()],
    chords: [...chords.values()].map((gathered) => gathered.told(several)),
    remarks: remarksOf(slices, keys.size, chords.size, [...unread]),
  };
}

/** A chord and the bars in which it has been met. */
class Gathered {
  private readonly bars = new Map<string | undefined, Set<number>>();

  constructor(
    private readonly over: Omit<RingingChord, 'bars' | 'where'>,
    part: string | undefined,
    bar: number,
  ) {
    this.meet(part, bar);
  }

  meet(part: string | undefined, bar: number): void {
    const known = this.bars.get(part);
    if (known) known.add(bar);
    else this.bars.set(part, new Set([bar]));
  }

  told(several: boolean): RingingChord {
    const where = [...this.bars].map(([part, bars]) => {
      const text = barsText([...bars]);
      return several && part !== undefined ? `${part}, ${text}` : text;
    });
    const bars = [...new Set([...this.bars.values()].flatMap((some) => [...some]))];
    return { ...this.over, bars: bars.sort((a, b) => a - b), where: where.join('; ') };
  }
}

/**
 * @example barsText([5, 1, 3, 4]) // 'bars 1 and 3–5'
 */
export function barsText(bars: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const bar of [...bars].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && bar - last[1] <= 1) last[1] = bar;
    else runs.push([bar, bar]);
  }
  // Two bars in a row are two bars.
  const texts = runs.flatMap(([from, to]) =>
    from === to ? [String(from)] : to === from + 1 ? [String(from), String(to)] : [`${from}–${to}`],
  );
  const list =
    texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''}`;
  return `${bars.length === 1 ? 'bar' : 'bars'} ${list}`;
}

function slicesOf(document: TabDocument, { place, range }: RingingRequest): readonly Slice[] {
  if (range || !place) return slicesIn(document, range);
  const { part } = document.headerAt(place.line);
  return slicesIn(document, undefined).filter(({ system }) => system.header.part === part);
}

function chordsIn(
  document: TabDocument,
  { system, firstBar, lastBar }: Slice,
): readonly { readonly text: string; readonly bar: number }[] {
  const first = document.placeOf(system).firstBar;
  return system.reading.rows.flatMap(({ row, marks }) =>
    row === 'chords'
      ? marks.flatMap(({ text, column }) => {
          const bar = barAt(system, column);
          return bar < firstBar || bar > lastBar ? [] : [{ text, bar: first + bar }];
        })
      : [],
  );
}

/** The index of the bar that a column stands in; a name over a bar sign belongs to the bar after it. */
function barAt({ reading: { bars } }: System, column: number): number {
  const at = bars.findIndex(({ endColumn }) => column < endColumn);
  return at < 0 ? bars.length - 1 : at;
}

function overKey(header: Header, name: string, tuning: string): RingingKey {
  const { key } = header;
  const strings = key ? stringsInKey(header, key) : [];
  const sounding = soundingSpelling(header).key;
  const sounds = capoShift(header) === 0 || !sounding ? null : formatKey(sounding);
  return { name, sounds, tuning, strings, words: ringWords(strings) };
}

function soundingName(header: Header, text: string): string {
  return transposeWrittenChord(text, capoShift(header), soundingSpelling(header).key);
}

/** `DADGAD, capo 2`. */
function placeText({ tuning, instrument, capo }: Header): string {
  const name = tuning.name ?? formatTuning(tuning, instrument);
  return capo ? `${name}, capo ${formatCapo(capo)}` : name;
}

function titleOf(document: TabDocument, { place, range }: RingingRequest, slices: readonly Slice[]): string {
  const part = slices[0]?.system.header.part;
  if (range) return 'the bars that are selected';
  if (!place || document.parts.length < 2) return 'the whole file';
  return part === undefined ? 'what stands before the first part' : `the part ${part}`;
}

function remarksOf(
  slices: readonly Slice[],
  keys: number,
  chords: number,
  unread: readonly string[],
): string[] {
  if (slices.length === 0)
    return ['There is no system here yet; write one, or a chords row with bar lines, and ask again.'];
  const remarks: string[] = [];
  if (chords === 0)
    remarks.push('No chords are written; a chords row over the strings tells each of them apart.');
  if (keys === 0)
    remarks.push(
      'No key is written, so no string counts as outside it; a key: field above the tab, such as key: D, tells more.',
    );
  if (unread.length > 0)
    remarks.push(
      `Passed over, as ${unread.length === 1 ? 'it is no chord name' : 'they are no chord names'} that can be read: ${unread.join(', ')}.`,
    );
  return remarks;
}
