import assert from 'node:assert/strict';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { compare } from '../../../src/music/fraction';
import { Document } from '../../../src/notation/document';
import { parseLine } from '../../../src/notation/parseLine';
import type { NotePlace } from '../../../src/notation/print/pieces';
import { rewriteSystem, type RewriteRequest } from '../../../src/notation/print/rewriteSystem';
import { readSystem } from '../../../src/notation/systemReading';
import type { System } from '../../../src/notation/tabDocument';
import { demoSongs } from '../support/lines';
import { musicOf, time, type Music, type Telling } from '../support/music';
import { randomTab } from '../support/randomTab';

/*
 * What prints a passage reads it again: the same notes at the same exact times, on the strings and frets asked for.
 * What cannot be printed is refused. PEGBOX_RUNS and PEGBOX_SEED look at more, and at others; PEGBOX_TALLY tells counts.
 */
const RUNS = Number(process.env['PEGBOX_RUNS'] ?? 150);
const SETTINGS = { numRuns: RUNS, seed: Number(process.env['PEGBOX_SEED'] ?? 20_261_125) };

function systemOf(text: string): System {
  const { systems } = new Document(text);
  assert.equal(systems.length, 1);
  return systems[0] ?? assert.fail();
}

function placeAsItIs(system: System, index: number): NotePlace | undefined {
  const note = system.reading.notes[index];
  return (
    note && {
      string: note.string,
      fret: note.fret ?? 0,
      ...(note.touched === undefined ? {} : { touched: note.touched }),
    }
  );
}

function request(system: System, more: Partial<RewriteRequest> = {}): RewriteRequest {
  return {
    system,
    firstBar: 0,
    lastBar: system.reading.bars.length - 1,
    header: system.header,
    place: (index) => placeAsItIs(system, index),
    keepLabels: true,
    strings: system.reading.strings.map(({ number }) => number),
    position: system,
    ...more,
  };
}

/** How many passages a law asked for, how many were printed, and how many of them to the last mark. */
class Tally {
  private asked = 0;
  private printed = 0;
  private exact = 0;

  /** Prints, reads again, and holds what was read against what the system says in the telling's way. */
  check(asking: RewriteRequest, telling: Telling): readonly string[] | undefined {
    const { firstBar, lastBar, system } = asking;
    this.asked += 1;
    const lines = rewriteSystem(asking);
    if (!lines) return undefined;
    this.printed += 1;
    const wanted = musicOf(system.reading, { ...telling, firstBar, lastBar });
    const reading = readSystem(lines.map(parseLine), asking.header, asking.position);
    const found = musicOf(reading, { pitches: telling.pitches ?? true });
    try {
      assert.deepEqual(betweenTheNotes(found), betweenTheNotes(wanted));
      if (isDeepStrictEqual(found, wanted)) this.exact += 1;
      else assertMarksInOrder(found, wanted);
    } catch (error) {
      const was = system.lines.map(({ text }) => text).join('\n');
      throw new Error(`${String(error)}\n--- was\n${was}\n--- printed\n${lines.join('\n')}`);
    }
    return lines;
  }

  /** A printer that refuses too much, or lets marks wander, would keep every law. */
  assertMostly(printed: number, exact: number): void {
    const said = `${this.printed} of ${this.asked} printed, ${this.exact} of them to the last mark`;
    if (process.env['PEGBOX_TALLY']) console.log(said);
    assert.ok(this.printed >= this.asked * printed, said);
    assert.ok(this.exact >= this.printed * exact, said);
  }
}

/** What is said apart from when, between two notes, a mark stands or a hand moves. */
function betweenTheNotes({ notes, marks, ...rest }: Music): unknown {
  return {
    ...rest,
    marks: marks.map(({ text }) => text),
    notes: notes.map(({ techniques, ...note }) => ({
      ...note,
      techniques: techniques.map((technique) => technique.replace(/ at .*/, '')),
    })),
  };
}

/** A mark at a note's column stays with the note; any other one, whose time may move, passes no onset. */
function assertMarksInOrder(found: Music, wanted: Music): void {
  wanted.marks.forEach((mark, i) => {
    const at = found.marks[i]?.onset ?? assert.fail();
    for (const { onset } of wanted.notes) {
      const [was, is] = [compare(mark.onset, onset), compare(at, onset)];
      const stays = mark.atNote ? was === is : was * is >= 0;
      assert.ok(stays, `${mark.text} moved from ${time(mark.onset)} to ${time(at)}`);
    }
  });
}

/** The least that a note can go down: no fret below 0 may come to be written for it, nor for what it goes to. */
function leastOf(system: System, index: number): number {
  const note = system.reading.notes[index];
  const targets = note?.techniques.flatMap(({ toFret }) => toFret ?? []) ?? [];
  return -Math.floor(Math.min(note?.fret ?? 0, ...targets));
}

/** The most that it can go up on a neck of 22 frets. */
function mostOf(system: System, index: number): number {
  const note = system.reading.notes[index];
  const targets = note?.techniques.flatMap(({ toFret }) => toFret ?? []) ?? [];
  return 22 - Math.ceil(Math.max(note?.fret ?? 0, ...targets));
}

/** Frets to add to each note, from random numbers, as far as the neck allows; a harmonic goes to another node. */
function frets(system: System, shifts: readonly number[]): Required<Pick<Telling, 'up' | 'touched'>> {
  const { notes } = system.reading;
  const shift = (index: number): number => shifts[index % shifts.length] ?? 0;
  return {
    up: (index) => {
      const note = notes[index];
      if (!note || note.kind === 'muted' || note.kind === 'natural-harmonic') return 0;
      return Math.max(leastOf(system, index), Math.min(shift(index), mostOf(system, index)));
    },
    touched: (index) => {
      const note = notes[index];
      if (note?.kind === 'natural-harmonic') return [5, 7, 12, 19][Math.abs(shift(index)) % 4];
      const up = leastOf(system, index) > shift(index) ? leastOf(system, index) : shift(index);
      return note?.touched === undefined ? undefined : note.touched + Math.min(up, mostOf(system, index));
    },
  };
}

/** The places that a telling asks for. */
function placesFor(system: System, { up, touched, string }: Telling): RewriteRequest['place'] {
  return (index) => {
    const place = placeAsItIs(system, index);
    if (!place) return undefined;
    const node = touched?.(index) ?? place.touched;
    return {
      string: string?.(place.string) ?? place.string,
      fret: place.fret + (up?.(index) ?? 0),
      ...(node === undefined ? {} : { touched: node }),
    };
  };
}

const shifts = fc.array(fc.integer({ min: -12, max: 14 }), { minLength: 1, maxLength: 12 });

describe('printing', function () {
  this.timeout(0);

  it('a system as it is writes its very bars', () => {
    const tally = new Tally();
    fc.assert(
      fc.property(randomTab, (text) => {
        // A stop right at a bracket's note says nothing, and is left out.
        const system = systemOf(text.replaceAll('.(', '-('));
        const lines = tally.check(request(system), {});
        assert.deepEqual(
          lines?.map(bodyOf),
          system.lines.map((line) => bodyOf(line.text)),
        );
      }),
      SETTINGS,
    );
    tally.assertMostly(1, 1);
  });

  it('the songs as they are writes their very lines', () => {
    for (const song of demoSongs()) {
      for (const system of new Document(song).systems) {
        const lines = rewriteSystem(request(system));
        assert.deepEqual(
          lines,
          system.lines.map(({ text }) => text),
        );
      }
    }
  });

  it('other frets keeps every time and sign', () => {
    const tally = new Tally();
    fc.assert(
      fc.property(randomTab, shifts, (text, by) => {
        const system = systemOf(text);
        const telling = { ...frets(system, by), pitches: false };
        tally.check(request(system, { place: placesFor(system, telling) }), telling);
      }),
      SETTINGS,
    );
    tally.assertMostly(0.93, 0.9);
  });

  it('other strings keeps every time and sign', () => {
    const tally = new Tally();
    fc.assert(
      fc.property(randomTab, shifts, fc.nat(), (text, by, turn) => {
        // A stop with no note before it ends what rings into the system, on whichever string that is.
        const struckFirst = text.replace(/^[A-G]\d? *[-|:.]*/gm, (start) => start.replaceAll('.', '-'));
        const system = systemOf(struckFirst);
        const count = system.header.tuning.strings.length;
        const string = (number: number): number => ((number - 1 + turn) % count) + 1;
        const telling = { ...frets(system, by), string, pitches: false };
        tally.check(request(system, { place: placesFor(system, telling) }), telling);
      }),
      SETTINGS,
    );
    tally.assertMostly(0.93, 0.9);
  });

  it('cut at any bar says in its pieces what the whole said', () => {
    const tally = new Tally();
    fc.assert(
      fc.property(randomTab, (text) => {
        const system = systemOf(text);
        const last = system.reading.bars.length - 1;
        for (let cut = 0; cut < last; cut++) {
          tally.check(request(system, { lastBar: cut }), {});
          const position = { firstInPart: false, firstInSection: false };
          tally.check(request(system, { firstBar: cut + 1, position }), {});
        }
      }),
      SETTINGS,
    );
    tally.assertMostly(0.97, 0.95);
  });

  it('some bars on other frets says what they said', () => {
    const tally = new Tally();
    fc.assert(
      fc.property(randomTab, shifts, fc.nat(3), fc.nat(3), (text, by, a, b) => {
        const system = systemOf(text);
        const count = system.reading.bars.length;
        const [firstBar, lastBar] = [Math.min(a % count, b % count), Math.max(a % count, b % count)];
        const position = firstBar === 0 ? system : { firstInPart: false, firstInSection: false };
        const telling = { ...frets(system, by), pitches: false };
        const asking = { firstBar, lastBar, position, place: placesFor(system, telling) };
        tally.check(request(system, asking), telling);
      }),
      SETTINGS,
    );
    tally.assertMostly(0.95, 0.9);
  });
});

/** A line from its first bar sign on. */
function bodyOf(text: string): string {
  const line = parseLine(text);
  return line.kind === 'string' || line.kind === 'row' ? text.slice(line.bodyStart).trimEnd() : text;
}
