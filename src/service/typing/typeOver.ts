import type { System, TabDocument } from '../../notation/tabDocument';
import type { Place, TextEdit } from '../records';
import { endsSystem } from './nextBar';
import { Staff, type StaffCursor } from './staff';
import { columnOf, offsetOf } from './stringCell';
import type { Cursor, TypedKey, TypedOver } from './typedKey';

/**
 * What a key does while one types over the staff. On a string line a sign takes the place of the dash at the cursor and the
 * cursor goes on; a digit right behind a digit makes one number; what is taken away leaves dashes; a bar sign stays. Every
 * other note keeps its string, fret and onset: room for a second digit is a column of its own, given back with it. Outside
 * string lines a key is plain text.
 *
 * Looks at the systems of the cursors alone; pure, and never fails.
 * @example typeOver(document, [{ anchor: place, active: place }], { text: '7' })
 */
export function typeOver(document: TabDocument, cursors: readonly Cursor[], key: TypedKey): TypedOver {
  const text = { kind: 'text' } as const;
  const spots = cursors.map((cursor) => spotOf(document, cursor, key));
  if (spots.every((spot) => spot === undefined)) return text;
  const outside = cursors.filter((_, i) => spots[i] === undefined);
  // What is selected over several lines is replaced as text; so is what only the editor knows how to write.
  if (outside.some((cursor) => !isPlainOutside(cursor, key))) return text;
  const staves = new Map<System, Staff>();
  const places = spots.map((spot) => {
    if (!spot) return undefined;
    const cursor: StaffCursor = { ...spot.cursor };
    const staff = staves.get(spot.system);
    staves.set(spot.system, new Staff(spot.system, [...(staff?.cursors ?? []), cursor]));
    return { system: spot.system, cursor };
  });
  for (const staff of staves.values()) staff.type(key);
  const edits = [...staves].flatMap(([system, staff]) => editsBetween(system, staff.system));
  edits.push(...outside.flatMap((cursor) => plainEdit(cursor, key)));
  edits.sort((a, b) => order(a.range.start, b.range.start));
  const notice = [...staves.values()].map((staff) => staff.notice).find((said) => said !== undefined);
  const now = cursors.map((cursor, i): Cursor => {
    const place = places[i];
    const staff = place && staves.get(place.system);
    const { line, character } = staff ? placeIn(staff.system, place.cursor) : plainPlace(cursor, key);
    const before = (other: System): boolean => other.firstLine + other.lines.length <= cursor.active.line;
    const added = [...staves].reduce(
      (sum, [system, { system: after }]) =>
        sum + (before(system) ? after.lines.length - system.lines.length : 0),
      0,
    );
    const at = { line: line + added, character };
    return { anchor: at, active: at };
  });
  return { kind: 'staff', edits, cursors: now, ...(notice !== undefined && { notice }) };
}

interface Spot {
  readonly system: System;
  readonly cursor: StaffCursor;
}

/** Where a cursor stands on a staff; undefined where the key is plain text. */
function spotOf(document: TabDocument, { anchor, active }: Cursor, key: TypedKey): Spot | undefined {
  if (anchor.line !== active.line) return undefined;
  const system = document.systemAt(active.line);
  const at = active.line - (system?.firstLine ?? 0);
  const line = system?.lines[at];
  if (!system || line?.kind !== 'string') return undefined;
  const isIn = ({ character }: Place): boolean => {
    if (character <= line.bodyStart || character > line.bodyEnd) return false;
    if (character < line.bodyEnd) return true;
    // At the end of its run a line is still being written, unless a bar sign ends the whole system.
    return anchor.character !== active.character || goesOnBehind(key, endsSystem(system, line));
  };
  if (!isIn(anchor) || !isIn(active)) return undefined;
  return {
    system,
    cursor: {
      line: at,
      column: columnOf(line, active.character),
      anchor: columnOf(line, anchor.character),
    },
  };
}

function goesOnBehind(key: TypedKey, isEnd: boolean): boolean {
  if (!isEnd || key === 'delete') return false;
  return key === 'backspace' || /^[-0-9xhptrb/\\~().<>=]$/i.test(key.text);
}

function isPlainOutside({ anchor, active }: Cursor, key: TypedKey): boolean {
  if (typeof key === 'object') return anchor.line === active.line && key.text !== '\n';
  // Where a line break would go, lines join: that is for the editor alone.
  return anchor.line === active.line && (key === 'delete' ? false : active.character > 0);
}

function plainEdit({ anchor, active }: Cursor, key: TypedKey): TextEdit[] {
  const [start, end] = anchor.character <= active.character ? [anchor, active] : [active, anchor];
  if (typeof key === 'object') return [{ range: { start, end }, newText: key.text }];
  const from = start.character === end.character ? { ...start, character: start.character - 1 } : start;
  return [{ range: { start: from, end }, newText: '' }];
}

function plainPlace({ anchor, active }: Cursor, key: TypedKey): Place {
  const { line } = active;
  const character = Math.min(anchor.character, active.character);
  if (typeof key === 'object') return { line, character: character + key.text.length };
  return { line, character: anchor.character === active.character ? character - 1 : character };
}

function placeIn({ firstLine, lines }: System, { line, column }: StaffCursor): Place {
  const own = lines[line];
  return { line: firstLine + line, character: own?.kind === 'string' ? offsetOf(own, column) : 0 };
}

/** Edits for the stretches of lines that differ, and for a row that came on top. */
function editsBetween(old: System, now: System): TextEdit[] {
  if (old === now) return [];
  const { firstLine } = old;
  if (old.lines.length === now.lines.length)
    return old.lines.flatMap(({ text }, i) => stretch(firstLine + i, text, now.lines[i]?.text ?? ''));
  const last = old.lines.at(-1);
  const end = { line: firstLine + old.lines.length - 1, character: last?.text.length ?? 0 };
  return [
    {
      range: { start: { line: firstLine, character: 0 }, end },
      newText: now.lines.map(({ text }) => text).join('\n'),
    },
  ];
}

function stretch(line: number, old: string, now: string): TextEdit[] {
  if (old === now) return [];
  const most = Math.min(old.length, now.length);
  let start = 0;
  while (start < most && old[start] === now[start]) start++;
  let tail = 0;
  while (tail < most - start && old[old.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  const place = (character: number): Place => ({ line, character });
  return [
    {
      range: { start: place(start), end: place(old.length - tail) },
      newText: now.slice(start, now.length - tail),
    },
  ];
}

function order(a: Place, b: Place): number {
  return a.line - b.line || a.character - b.character;
}
