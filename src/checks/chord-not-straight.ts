import { fingerboardOf } from '../notation/headerViews';
import type { NoteReading } from '../notation/reading';
import type { Check, Scene, SystemFinding } from './check';
import { onsetsOf } from './support/onsets';
import { inWords } from './support/words';

export const chordNotStraight: Check = {
  code: 'chord-not-straight',
  severity: 'warning',
  title: 'A chord that no straight bar plays',
  help: {
    group: 'The hand',
    meaning:
      'Under `fretting: slide` one straight bar stops the strings, so all notes that it stops at one time lie at one fret. Open strings sound beside it, but not between two that it stops. (Slants, which some players know, are not in the notation.)',
    mending:
      'Write all stopped notes of the chord at one fret, leave out those that are not, or write `fretting: fingers`.',
  },
  run: {
    system: (scene) =>
      scene.header.fretting === 'slide'
        ? onsetsOf(scene.reading).flatMap((column) => findingFor(scene, column) ?? [])
        : [],
  },
  examples: {
    raises: [
      'tuning: open E\nfretting: slide\n\nE|5---|\nB|7---|\nG#|----|\nE|----|\nB|----|\nE|----|\n',
      'tuning: open E\nfretting: slide\n\nE|5---|\nB|0---|\nG#|5---|\nE|----|\nB|----|\nE|----|\n',
      'instrument: lap steel\nfretting: slide\n\nE|3---|\nC|5---|\nA|----|\nG|----|\nE|----|\nC|----|\n',
    ],
    quiet: [
      'tuning: open E\nfretting: slide\n\nE|5---|\nB|5---|\nG#|5---|\nE|0---|\nB|----|\nE|0---|\n',
      'tuning: open E\nfretting: slide\n\nE|5-7-|\nB|----|\nG#|----|\nE|----|\nB|----|\nE|----|\n',
      'tuning: open E\n\nE|4---|\nB|5---|\nG#|----|\nE|----|\nB|----|\nE|----|\n',
    ],
  },
};

function findingFor(scene: Scene, column: readonly NoteReading[]): SystemFinding | undefined {
  const fretted = column.filter(({ kind, fret }) => kind === 'fretted' && fret !== undefined);
  const stopped = fretted.filter((note) => !isOpen(scene, note));
  const [first] = stopped;
  const last = stopped.at(-1);
  if (!first || !last || first === last) return undefined;
  const frets = [...new Set(stopped.map(({ fret }) => fret))];
  if (frets.length > 1) {
    return at(
      stopped.find(({ fret }) => fret !== first.fret) ?? last,
      `One straight bar cannot stop frets ${inWords(frets.map(String))} at one time. Write the notes of the chord at one fret.`,
    );
  }
  const strings = stopped.map(({ string }) => string);
  const between = fretted.find(
    (note) =>
      !stopped.includes(note) && note.string < Math.max(...strings) && note.string > Math.min(...strings),
  );
  return (
    between &&
    at(
      between,
      `String ${between.string} is open between strings that the bar stops at fret ${first.fret}. Write ${first.fret} there too, or leave it out.`,
    )
  );
}

function at({ line, start, end }: NoteReading, message: string): SystemFinding {
  return { line, start, end, message };
}

function isOpen({ header, reading }: Scene, note: NoteReading): boolean {
  const index = reading.strings.find(({ line }) => line === note.line)?.index ?? -1;
  const board = fingerboardOf(header);
  return note.fret === 0 || board.absoluteFret(index, note.fret ?? 0) === board.absoluteFret(index, 0);
}
