import type { RowLine, RowMark } from '../../notation/parsedLine';
import type { Header } from '../../notation/header';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Block } from '../change/rewrite';
import type { PlayedChord } from './chooseShapes';
import { ringingFrom, strumsOf, type Ringing } from './strumsOf';
import { writeStrums } from './writeStrums';

/** Systems to be written with the strums of their chords. */
export interface FillTask {
  readonly document: TabDocument;
  /** In the order of the text. */
  readonly systems: readonly System[];
  readonly chordsOf: (system: System) => readonly PlayedChord[];
  readonly headerFor: (system: System) => Header;
  readonly strum: 'once' | 'beats';
  readonly keeps: (row: RowLine) => boolean;
  readonly rewrite: (system: System, row: RowLine, mark: RowMark) => string;
  /** Whether what rings from tab before the first of these systems rings into it. */
  readonly joins: boolean;
  /** Whether a system in which nothing is struck is written, too. */
  readonly empty: boolean;
}

export interface FilledSystems {
  readonly blocks: ReadonlyMap<System, Block>;
  /** Systems that no way of writing says. */
  readonly unwritten: readonly System[];
  /** Whether a `.` ends what would blur a chord. */
  readonly stopped: boolean;
}

/** Writes each system's strums; what rings, and a chord that holds, go on into the next system of the part and section. */
export function filledSystems(task: FillTask): FilledSystems {
  const { document } = task;
  const blocks = new Map<System, Block>();
  const unwritten: System[] = [];
  let stopped = false;
  const octaves = writesOctaves(document);
  const ends = new Map<
    string | undefined,
    { system: System; ringing: Ringing; holds: PlayedChord | undefined }
  >();
  for (const system of task.systems) {
    const { part } = system.header;
    const header = task.headerFor(system);
    const last = ends.get(part);
    const goesOn = last && follows(document, last.system, system);
    const chords = task.chordsOf(system);
    const before = {
      ringing: goesOn ? last.ringing : task.joins ? ringingInto(document, system) : new Map(),
      holds: goesOn && task.headerFor(last.system) === header ? last.holds : undefined,
    };
    const made = strumsOf(system, header, chords, task.strum, before);
    if (made.strums.length === 0 && !task.empty) {
      ends.set(part, { system, ringing: made.ringing, holds: made.holds });
      continue;
    }
    const lines = writeStrums({
      system,
      header,
      strums: made.strums,
      octaves,
      keeps: task.keeps,
      rewrite: (row, mark) => task.rewrite(system, row, mark),
      timeOf: (row, mark) =>
        chords.find(({ event }) => event.row === row && event.mark.start === mark.start)?.event.time,
    });
    if (!lines) {
      unwritten.push(system);
      ends.delete(part);
      continue;
    }
    if (made.stopped) stopped = true;
    blocks.set(system, { lines, header });
    ends.set(part, { system, ringing: made.ringing, holds: made.holds });
  }
  return { blocks, unwritten, stopped };
}

/** Whether a system is the next one of its part, in the same section. */
function follows({ systems }: TabDocument, before: System, system: System): boolean {
  const next = systems
    .slice(systems.indexOf(before) + 1)
    .find(({ header }) => header.part === before.header.part);
  return next === system && system.section === before.section;
}

function ringingInto(document: TabDocument, system: System): Ringing {
  return ringingFrom(
    document
      .ringingInto(system)
      .map(({ note }) => ({ string: note.string, midis: note.pitches.map(({ midi }) => midi) })),
  );
}

/** Whether the labels of a document have octaves; so they do where it has none yet. */
function writesOctaves({ systems }: TabDocument): boolean {
  const labels = systems.flatMap(({ lines }) =>
    lines.flatMap((line) => (line.kind === 'string' && line.label.number === undefined ? [line.label] : [])),
  );
  return labels.length === 0 || labels.some(({ notes }) => notes.some(({ octave }) => octave !== undefined));
}
