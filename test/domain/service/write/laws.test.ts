import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Note } from 'tonal';
import { formatKey, readKey } from '../../../../src/music/key';
import { degreeSteps } from '../../../../src/service/write/typedPitches';
import { pitchClassOf } from '../../../../src/music/noteName';
import { randomPiece } from '../../support/randomPiece';
import { randomSong } from '../change/randomSong';
import { service, settings } from '../cursor';

/** Lengths in 48ths of a quarter note, each with its sign: reckoned here apart from the program's own fractions. */
const LENGTHS = [
  ['q', 48],
  ['e', 24],
  ['s', 12],
  ['h', 96],
  ['q.', 72],
  ['e.', 36],
  ['et', 16],
  ['qt', 32],
] as const;

interface Struck {
  readonly midis: readonly number[];
  readonly at: number;
}

/** A text to type, and what it asks for from its start. */
const typed = fc
  .array(
    fc.record({
      midis: fc.uniqueArray(fc.integer({ min: 40, max: 76 }), { minLength: 1, maxLength: 2 }),
      length: fc.constantFrom<readonly [string, number]>(...LENGTHS),
      rest: fc.constantFrom('', '', '', '-', '.'),
    }),
    { minLength: 1, maxLength: 10 },
  )
  .map((pieces) => {
    let at = 0;
    const struck: Struck[] = [];
    const words = pieces.flatMap(({ midis, length: [sign, size], rest }) => {
      struck.push({ midis, at });
      at += size;
      if (rest !== '') at += 24;
      const names = midis.map((midi) => Note.fromMidi(midi)).join('+');
      return [`${names}:${sign}`, ...(rest === '' ? [] : [rest])];
    });
    return { text: words.join(' '), struck };
  });

/** A note of a system: what it is, its time in the system and in its part, in 48ths. */
interface Heard {
  readonly what: string;
  readonly midi: number;
  readonly at: number;
}

/** By system, in the order of the text. */
function heardIn(document: Opened): Heard[][] {
  return document.systems.map((system) => {
    const { onset: start, part } = document.placeOf(system);
    return system.reading.notes.map(({ string, fret, touched, onset, pitches, kind }) => ({
      what: [part, string, fret, touched, kind, `${onset.n}/${onset.d}`].join(' '),
      midi: Math.round(pitches[0]?.midi ?? NaN),
      at: (start.n * 48) / start.d + (onset.n * 48) / onset.d,
    }));
  });
}

/**
 * The notes that came, for each place at which new systems may have been put in so that every old system still says all
 * that it said, at the same times.
 */
function* added(before: readonly Heard[][], after: readonly Heard[][]): Generator<Heard[]> {
  const count = after.length - before.length;
  for (let at = 0; at <= before.length; at++) {
    const came = after.slice(at, at + count).flat();
    const rest = [...after.slice(0, at), ...after.slice(at + count)];
    const more = rest.map((system, i) => {
      const there = (before[i] ?? []).map(({ what }) => what);
      const left = system.filter(({ what }) => {
        const k = there.indexOf(what);
        if (k >= 0) there.splice(k, 1);
        return k < 0;
      });
      return there.length === 0 ? left : undefined;
    });
    if (more.every((left) => left !== undefined)) yield [...came, ...more.flat()];
  }
}

/** Lines that belong to no system. */
function outside(document: Opened): string[] {
  const lines: string[] = [];
  for (let i = 0; i < document.lineCount; i++)
    if (!document.systemAt(i) && document.line(i).kind !== 'blank') lines.push(document.line(i).text);
  return lines;
}

/** Takes out of a list one of each of others; what is left, and whether all were there. */
function without(all: readonly string[], taken: readonly string[]): { left: string[]; missing: string[] } {
  const left = [...all];
  const missing: string[] = [];
  for (const one of taken) {
    const at = left.indexOf(one);
    if (at < 0) missing.push(one);
    else left.splice(at, 1);
  }
  return { left, missing };
}

type Opened = ReturnType<typeof service.open>;

describe('laws of writing by names', () => {
  const places = fc.record({ line: fc.integer({ min: 0, max: 999 }), column: fc.nat(90) });

  /** Pieces in which strings hold nothing but dashes from a column on. */
  const halfEmpty = fc.tuple(randomPiece(), fc.nat(40)).map(([text, from]) =>
    text.replace(/^([A-G][#b]?\d?(?:\/\S+)? *\|)(.*)$/gm, (_, label: string, body: string) => {
      const rest = body.slice(from).replace(/[^|-]/g, '-');
      return label + body.slice(0, from) + rest;
    }),
  );

  for (const [what, texts, runs, leastInBars] of [
    ['pieces', randomPiece(), 60, 0],
    ['pieces that go on empty', halfEmpty, 200, 15],
    ['rough songs', randomSong, 100, 0],
  ] as const)
    it(`in ${what}: it reads back as asked, or nothing is written; everything else stays`, () => {
      let written = 0;
      let inBars = 0;
      fc.assert(
        fc.property(
          texts,
          typed,
          places,
          fc.constantFrom(false, false, false, true),
          (text, { text: notes, struck }, at, newBars) => {
            const document = service.open(text, settings);
            const line = Math.floor((at.line * document.lineCount) / 1000);
            const place = { line, character: Math.min(at.column, document.line(line).text.length) };
            const system = document.systemAt(line);
            const before = heardIn(document);
            const prose = outside(document);
            const request = { text: notes, ...(newBars && { inTheWay: 'new bars' as const }) };
            const result = service.writeNotes(document, place, request, settings);
            if ('error' in result) return;
            written += 1;
            const { report } = result;
            assert.equal(report.kept + report.moved + report.unplaced.length, report.notesIn);
            assert.equal(report.notesIn, struck.flatMap(({ midis }) => midis).length);
            document.edit(result.edits);
            const after = heardIn(document);
            const told = `${JSON.stringify({ place, notes, newBars })}\n${text}\n=>\n${document.text()}`;
            assert.deepEqual(without(outside(document), prose).missing, [], told);
            const lost = report.unplaced.map(({ name }) => Note.midi(name));
            const wanted = struck.flatMap(({ midis, at: onset }) =>
              midis.flatMap((midi) => {
                const k = lost.indexOf(midi);
                // Of several at one pitch any may be the one without a place.
                return k < 0 ? [`${midi}@${onset}`] : [];
              }),
            );
            if (system && newBars) {
              // The system was divided: each of its notes is still there, and so many came.
              const notesOf = (all: readonly Heard[][]): string[] =>
                all.flat().map(({ midi }) => String(midi));
              const own = without(notesOf(after), notesOf(before));
              assert.deepEqual(own.missing, [], told);
              assert.equal(own.left.length, report.kept, told);
              return;
            }
            if (system) inBars += 1;
            const [first = ''] = wanted;
            const ways = [...added(before, after)].map((came) => {
              const begins = came.filter(({ midi }) => first.startsWith(`${midi}@`));
              return begins.map((begin) => {
                const zero = begin.at - Number(first.split('@')[1]);
                return came.map(({ midi, at: time }) => `${midi}@${Math.round((time - zero) * 1e6) / 1e6}`);
              });
            });
            const isRight = (have: readonly string[]): boolean =>
              have.length === report.kept && without(have, wanted).missing.length === 0;
            assert.ok(wanted.length === 0 || ways.flat().some(isRight), `${wanted.join(' ')} in\n${told}`);
          },
        ),
        { numRuns: runs },
      );
      assert.ok(written > runs / 3, `${written} of ${runs} were written`);
      assert.ok(inBars >= leastInBars, `${inBars} were written into bars that were there`);
    });
});

describe('degrees', () => {
  const INTERVALS = ['1P', '2M', '3M', '4P', '5P', '6M', '7M'];

  it('are what tonal makes of them in every key and mode', () => {
    for (const tonic of ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B', 'Cb', 'G#'])
      for (const mode of ['major', 'minor', 'dorian', 'phrygian', 'lydian', 'mixolydian', 'locrian'])
        for (let number = 1; number <= 15; number++)
          for (const alter of [-2, -1, 0, 1, 2]) {
            const key = readKey(`${tonic} ${mode}`);
            assert.ok(key.ok);
            const ours = (pitchClassOf(key.value.tonic) + degreeSteps(number, alter) + 24) % 12;
            const plain = Note.chroma(Note.transpose(tonic, INTERVALS[(number - 1) % 7] ?? ''));
            assert.equal(ours, (plain + alter + 12) % 12, `${formatKey(key.value)} ${alter} ${number}`);
          }
  });

  it('are written at those pitches, under a capo as the key is played', () => {
    for (const tonic of ['D', 'Eb', 'F#', 'A'])
      for (const capo of [0, 3])
        for (const [sign, number, interval] of [
          ['', 1, '1P'],
          ['b', 3, '3m'],
          ['', 3, '3M'],
          ['#', 4, '4A'],
          ['b', 6, '6m'],
          ['b', 7, '7m'],
        ] as const) {
          const fields = `tuning: DADGAD\nkey: ${tonic} minor${capo > 0 ? `\ncapo: ${capo}` : ''}`;
          const document = service.open(`${fields}\n\n`, settings);
          const place = { line: document.lineCount - 1, character: 0 };
          const result = service.writeNotes(document, place, { text: `${sign}${number}` }, settings);
          assert.ok(!('error' in result));
          document.edit(result.edits);
          const [note] = service.notes(document);
          const wanted = Note.chroma(Note.transpose(tonic, interval)) + capo;
          assert.equal((note?.midi ?? NaN) % 12, wanted % 12, `${sign}${number} in ${fields}`);
        }
  });
});
