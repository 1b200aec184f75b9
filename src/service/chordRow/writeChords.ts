import type { System, TabDocument } from '../../notation/tabDocument';
import { NOTHING_THERE } from '../change/change';
import { editTo } from '../change/edits';
import { slicesIn } from '../change/slices';
import type { ChangeResult } from '../serviceApi';
import { planRow, type RowPlan } from './planRow';
import { chordRowOf, withChordRow, type WrittenRow } from './rowText';
import { earFor } from './spanName';
import type { WriteChordsRequest } from './writeChordsRequest';

/**
 * Writes the row of chords of every system that a range touches from what sounds, or brings it up to date. Names are
 * those of the hovers, as played under a full capo. A player's own names stay where they agree with what sounds.
 */
export function writeChords(document: TabDocument, request: WriteChordsRequest): ChangeResult {
  const { range, replace = false } = request;
  const systems = slicesIn(document, range).map(({ system }) => system);
  const sounding = systems.filter(({ reading }) => reading.notes.length > 0);
  if (sounding.length === 0) return { error: NOTHING_THERE };
  const rows = sounding.map((system) => rowFor(document, system, replace));
  const written = new Map(rows.map((row) => [row.system.firstLine, row]));
  const lines: string[] = [];
  for (let at = 0; at < document.lineCount; at++) {
    const row = written.get(at);
    if (!row) {
      lines.push(document.line(at).text);
      continue;
    }
    lines.push(...row.lines);
    at += row.system.lines.length - 1;
  }
  const notes = sounding.reduce((sum, { reading }) => sum + reading.notes.length, 0);
  const remarks = [summary(rows), ...rows.flatMap((row) => remarksOn(document, row))];
  return {
    edits: editTo(document, lines),
    report: { notesIn: notes, kept: notes, moved: 0, unplaced: [], remarks },
  };
}

interface Row extends RowPlan, WrittenRow {
  readonly system: System;
}

function rowFor(document: TabDocument, system: System, replace: boolean): Row {
  const at = chordRowOf(system)?.at;
  const marks = system.reading.rows.find(({ line }) => line === at)?.marks ?? [];
  const plan = planRow(earFor(document, system), marks, replace);
  return { system, ...plan, ...withChordRow(system, plan.names) };
}

function summary(rows: readonly Row[]): string {
  const sum = (count: (row: Row) => number): number => rows.reduce((all, row) => all + count(row), 0);
  const added = sum((row) => row.added);
  const replaced = sum((row) => row.replaced);
  const kept = sum(({ names }) => names.filter(({ name, mark }) => mark?.text === name).length);
  const parts = [
    `${added} ${added === 1 ? 'name' : 'names'} written`,
    ...(kept > 0 ? [`${kept} of yours kept`] : []),
    ...(replaced > 0 ? [`${replaced} replaced`] : []),
  ];
  return `${parts.join(', ')}.`;
}

function remarksOn(document: TabDocument, row: Row): readonly string[] {
  const { part, firstBar } = document.placeOf(row.system);
  const { bars } = row.system.reading;
  const where = (bar: number): string =>
    `${document.parts.length > 1 && part !== undefined ? `${part}, bar` : 'Bar'} ${firstBar + bar}`;
  const barAt = (column: number): number =>
    Math.max(
      0,
      bars.findIndex(({ endColumn }) => column < endColumn),
    );
  return [
    ...row.disagreeing.map(
      ({ text, column }) => `${where(barAt(column))}: ${text} stays, though something else sounds.`,
    ),
    ...row.unnamed.map((bar) => `${where(bar)}: what sounds has no everyday name, so none is written.`),
    ...row.cramped.map(({ name, time }) => {
      const at = bars.findLastIndex(({ onset }) => onset.n * time.d <= time.n * onset.d);
      return `${where(Math.max(0, at))}: ${name} has no room over its column, so it is not written.`;
    }),
  ];
}
