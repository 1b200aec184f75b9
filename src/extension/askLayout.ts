import * as vscode from 'vscode';
import { LAYOUT_ROWS, type LayoutRequest, type LayoutRow } from '../service/start/startAnswer';
import { askText } from './askText';
import { pick } from './pick';

/** The sentence that refuses a layout, or nothing. */
export type LayoutAttempt = (layout: LayoutRequest) => Promise<string | undefined>;

const REMEMBERED = 'pegbox.layout';
const BARS = [1, 2, 3, 4, 6, 8];
/** Each number of columns a beat, and what has its place then. */
const COLUMNS: readonly (readonly [number, string])[] = [
  [4, 'a place for every quarter of a beat'],
  [2, 'a place for every half of a beat'],
  [3, 'a place for every third of a beat'],
  [6, 'halves and thirds of a beat, or sixths'],
  [8, 'eighths of a beat, and room for frets of two digits'],
  [12, 'quarters and thirds of a beat'],
  [1, 'a place for every beat'],
];
const ROW_TEXTS: Readonly<Record<LayoutRow, string>> = {
  count: 'the beats, so that the rhythm is exact whatever you write',
  chords: 'names of chords',
  words: 'syllables to sing',
  picking: 'p i m a, or strokes d and u',
  fingers: 'fingers of the fretting hand',
};

/**
 * Asks how an empty system is laid out: like the last time with one key, or step by step. What is chosen is remembered.
 * Undefined when the user leaves.
 */
export async function askLayout(
  memory: vscode.Memento,
  title: string,
  attempt: LayoutAttempt,
): Promise<LayoutRequest | undefined> {
  const remembered = memory.get<LayoutRequest>(REMEMBERED);
  const last = await possible(remembered ?? {}, attempt);
  const items = [
    {
      label: layoutText(last),
      description: remembered ? 'as the last time' : 'as most tabs begin',
      choose: () => Promise.resolve(last),
    },
    { label: '$(list-unordered) Other bars, columns or rows…', choose: () => askParts(title, last, attempt) },
  ];
  const picked = await pick<vscode.QuickPickItem & { choose: () => Promise<LayoutRequest | undefined> }>(
    items,
    { title, placeholder: 'How is the system laid out?' },
  );
  const layout = await picked?.choose();
  if (layout !== undefined) await memory.update(REMEMBERED, layout);
  return layout;
}

/** What was remembered, without columns that the meter has no use for. */
async function possible(
  { columns, ...layout }: LayoutRequest,
  attempt: LayoutAttempt,
): Promise<LayoutRequest> {
  if (columns === undefined) return layout;
  return (await attempt({ columns })) === undefined ? { ...layout, columns } : layout;
}

async function askParts(
  title: string,
  last: LayoutRequest,
  attempt: LayoutAttempt,
): Promise<LayoutRequest | undefined> {
  const barItems = BARS.map((bars) => ({ label: barsText(bars), bars }));
  const bars = await pick(
    [...barItems, { label: '$(edit) Another number of bars…', alwaysShow: true, bars: undefined }],
    { title, placeholder: 'How many bars?', active: barItems.find((item) => item.bars === (last.bars ?? 4)) },
  );
  const count = bars && (bars.bars ?? (await typeBars(title, attempt)));
  if (count === undefined) return undefined;
  const refused = await Promise.all(COLUMNS.map(([columns]) => attempt({ columns })));
  const columnItems = COLUMNS.filter((_, i) => refused[i] === undefined).map(([columns, description]) => ({
    label: columnsText(columns),
    description,
    columns,
  }));
  const columns = await pick(columnItems, {
    title,
    placeholder: 'How many columns has a beat?',
    active: columnItems.find((item) => item.columns === last.columns),
  });
  if (columns === undefined) return undefined;
  const rows = await vscode.window.showQuickPick(
    LAYOUT_ROWS.map((row) => ({
      label: row,
      description: ROW_TEXTS[row],
      picked: last.rows?.includes(row) ?? false,
    })),
    { title, placeHolder: 'Which rows stand over the strings? None is fine.', canPickMany: true },
  );
  return rows && { bars: count, columns: columns.columns, rows: rows.map(({ label }) => label) };
}

async function typeBars(title: string, attempt: LayoutAttempt): Promise<number | undefined> {
  const typed = await askText({
    title,
    prompt: 'How many bars, 1 to 16',
    check: async (text) =>
      /^\s*\d+\s*$/.test(text) ? attempt({ bars: Number(text) }) : 'Type a whole number, such as 5.',
  });
  return typed === undefined ? undefined : Number(typed);
}

/**
 * A layout in words; what is left out as it is then taken.
 * @example layoutText({ bars: 2, columns: 3, rows: ['count'] }) // '2 bars, 3 columns a beat, with count'
 */
export function layoutText({ bars = 4, columns, rows = [] }: LayoutRequest): string {
  const width = columns === undefined ? 'room for sixteenths' : `${columnsText(columns)} a beat`;
  return [barsText(bars), width, ...(rows.length > 0 ? [`with ${rows.join(', ')}`] : [])].join(', ');
}

function barsText(bars: number): string {
  return bars === 1 ? '1 bar' : `${bars} bars`;
}

function columnsText(columns: number): string {
  return columns === 1 ? '1 column' : `${columns} columns`;
}
