import assert from 'node:assert/strict';
import { Document } from '../../../../src/notation/document';
import type { Range } from '../../../../src/notation/tabDocument';
import { convert } from '../../../../src/service/change/convert';
import { refinger } from '../../../../src/service/change/refinger';
import { simplify } from '../../../../src/service/change/simplify';
import type { ConvertRequest, RefingerRequest, SimplifyRequest } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { changeOrRefusal, nothingIsLost, onRandomChords, onRandomPassages, passage, taken } from './work';

/* Laws from playing.md ("Nothing is lost in silence", "Laws") and the list of what must hold; no outside source. */

const REQUESTS: readonly Omit<ConvertRequest, 'range'>[] = [
  { tuning: 'standard', alternatives: 3 },
  { tuning: 'standard', objective: 'hardest' },
  { tuning: 'half step down', closed: true },
  { tuning: 'standard', octaves: true },
  { tuning: 'half step down', by: 3 },
  { tuning: 'standard', capo: '2' },
  { instrument: 'baritone guitar' },
  { instrument: 'ukulele', octaves: true },
  { instrument: 'banjo' },
  { instrument: '12-string guitar', capo: 'none' },
  { tuning: 'standard', keep: 'function', key: 'G' },
  { tuning: 'standard', keep: 'function', key: 'F minor' },
  { tuning: 'standard', leaveOut: 'doubled' },
];

const OBJECTIVES: readonly RefingerRequest['objective'][] = ['lower', 'open', 'strings', 'hardest', 'closed'];

const LIMITS: readonly Omit<SimplifyRequest, 'range'>[] = [
  { span: 70 },
  { speed: 2 },
  { barres: false },
  { fingers: 2 },
  { highestFret: 7, fingers: 3 },
];

function pick<T>(from: readonly T[], choice: number): T {
  const one = from[choice % from.length];
  assert.ok(one !== undefined);
  return one;
}

describe('the hand at random passages', () => {
  it('convert: every note is kept, moved or named, in each of its ways', () => {
    let done = 0;
    onRandomPassages(
      (text, range, choice) => {
        const request = { range, ...pick(REQUESTS, choice) };
        const change = changeOrRefusal(convert(new Document(text), request, DEFAULT_SETTINGS));
        if (!change) return;
        done++;
        for (const way of [change, ...(change.alternatives ?? [])]) {
          const { told, before, after } = nothingIsLost(text, range, way);
          if (request.by === undefined && request.keep === undefined && !request.octaves)
            assert.equal(way.report.moved, 0, told);
          // What moved by octaves keeps its pitch class.
          if (request.octaves)
            assert.deepEqual(
              classes(after).filter((one) => !classes(before).includes(one)),
              [],
              told,
            );
        }
        const [cost = 0, ...others] = [change, ...(change.alternatives ?? [])].flatMap(
          ({ report }) => report.measures?.cost ?? [],
        );
        if (request.objective === undefined)
          for (const other of others) assert.ok(other >= cost - 0.002, `${text} ${other} < ${cost}`);
      },
      Number(process.env['HAND_RUNS'] ?? 60),
    );
    assert.ok(done > 3);
  });

  it('convert to the tuning it stands in: nothing changes, and the hand finds nothing dearer anew', () => {
    onRandomPassages((text, range) => {
      const document = new Document(text);
      const [first] = passage(document, range);
      assert.ok(first);
      const stays = changeOrRefusal(convert(document, { range }, DEFAULT_SETTINGS));
      assert.deepEqual(stays?.edits, []);
      // With a capo stated anew as it is, nothing changes either; what is worked out afresh costs no more.
      const { measures } = stays.report;
      const anew = changeOrRefusal(refinger(document, { range, objective: 'hardest' }, DEFAULT_SETTINGS));
      if (!measures || !anew?.report.compared) return;
      const { before, after } = anew.report.compared;
      assert.ok(before === undefined || after <= before, text);
    });
  });

  it('refinger: every pitch stays, and what was asked is never worse than in the text', () => {
    onRandomPassages(
      (text, range, choice) => {
        const objective = pick(OBJECTIVES, choice);
        const strings = objective === 'strings' ? { strings: [1, 2, 3, 4] } : {};
        const document = new Document(text);
        const change = changeOrRefusal(
          refinger(document, { range, objective, ...strings }, DEFAULT_SETTINGS),
        );
        if (!change) return;
        for (const way of [change, ...(change.alternatives ?? [])]) {
          const { told } = nothingIsLost(text, range, way);
          assert.equal(way.report.kept, way.report.notesIn, told);
          const [was, is] = [figures(document), figures(taken(text, way))];
          if (objective === 'lower') assert.ok(is.frets <= was.frets, told);
          if (objective === 'open') assert.ok(is.open >= was.open, told);
          if (objective === 'closed') assert.ok(is.open <= was.open, told);
          if (objective === 'strings') assert.ok(is.high >= was.high, told);
          const { before, after } = way.report.compared ?? { after: 0 };
          if (before !== undefined && objective === 'hardest') assert.ok(after <= before, told);
          if (change.edits.length === 0) assert.match(way.report.remarks[0] ?? '', /already/, told);
        }
      },
      Number(process.env['HAND_RUNS'] ?? 50),
    );
  });

  it('simplify: tune and bass stay, inner notes are named', () => {
    let done = 0;
    const law = (text: string, range: Range | undefined, choice: number): void => {
      const document = new Document(text);
      const change = changeOrRefusal(
        simplify(document, { range, ...pick(LIMITS, choice) }, DEFAULT_SETTINGS),
      );
      if (!change) return;
      const { told, after } = nothingIsLost(text, range, change);
      if (change.report.unplaced.length > 0) done++;
      assert.equal(change.report.moved, 0, told);
      const there = after.map(({ sound }) => sound.split(' ').slice(0, 3).join(' '));
      for (const outer of outerNotes(document, range)) assert.ok(there.includes(outer), `${outer}\n${told}`);
      const named = change.report.unplaced.length;
      const marked =
        taken(text, change)
          .text()
          .match(/^omitted .*$/gm) ?? [];
      if (!text.includes('omitted'))
        assert.equal(marked.join(' ').match(/[A-Gx][^, |]*/g)?.length ?? 0, named, told);
    };
    onRandomPassages(law, Number(process.env['HAND_RUNS'] ?? 30));
    onRandomChords((text, choice) => law(text, undefined, choice), Number(process.env['HAND_RUNS'] ?? 60));
    assert.ok(done > 3, String(done));
  });
});

/** Part, time and pitch class of each note. */
function classes(notes: readonly { readonly sound: string; readonly midi: number | undefined }[]): string[] {
  return notes.map(({ sound, midi }) => `${sound.split(' ').slice(0, 2).join(' ')} ${(midi ?? -1) % 12}`);
}

/** What the objectives ask for, counted over the whole text, also under capos and on short strings, by pitch. */
function figures(document: Document): { frets: number; open: number; high: number } {
  let [frets, open, high] = [0, 0, 0];
  for (const { header, reading } of document.systems) {
    const lowest = new Map<number, number>();
    const { tuning, capo } = header;
    tuning.strings.forEach((string, index) => {
      const number = tuning.strings.length - index;
      const lies = !capo || (capo.strings && !capo.strings.includes(number)) ? 0 : capo.fret;
      lowest.set(number, string.pitches[0].midi + Math.max(0, lies - string.firstFret));
    });
    for (const { kind, string, fret = 0, pitches } of reading.notes) {
      const [pitch] = pitches;
      if (kind !== 'fretted' || !pitch) continue;
      const isOpen = Math.abs(pitch.midi - (lowest.get(string) ?? NaN)) < 0.01;
      if (isOpen) open++;
      else frets += fret;
      if (string <= 4) high++;
    }
  }
  return { frets, open, high };
}

/**
 * Part, time and pitch of every note of a passage than which nothing higher, or nothing lower, begins with it or rings:
 * worked out from the lengths that the document gives, apart from the code under test.
 */
function outerNotes(document: Document, range: Range | undefined): string[] {
  const notes = passage(document, range).flatMap(({ system, firstBar, lastBar }) => {
    const { part, onset } = document.placeOf(system);
    const start = onset.n / onset.d;
    return system.reading.notes.flatMap((note) => {
      const [pitch] = note.pitches;
      if (!pitch || note.bar < firstBar || note.bar > lastBar) return [];
      const end = document.endOf(system, note);
      const from = start + note.onset.n / note.onset.d;
      return [{ part, system, note, midi: pitch.midi, from, to: end.n / end.d }];
    });
  });
  return notes.flatMap(({ part, system, note, midi, from }) => {
    const beside = notes.filter(
      (other) =>
        other.part === part &&
        (Math.abs(other.from - from) < 1e-9 || (other.from < from && other.to > from + 1e-9)),
    );
    const low = Math.min(...beside.map((other) => other.midi));
    const high = Math.max(...beside.map((other) => other.midi));
    if (midi !== low && midi !== high) return [];
    const { onset } = document.placeOf(system);
    const at = [onset.n * note.onset.d + note.onset.n * onset.d, onset.d * note.onset.d];
    return [`${part ?? ''} ${lowest(at[0] ?? 0, at[1] ?? 1)} ${midi.toFixed(2)}`];
  });
}

function lowest(n: number, d: number): string {
  let [a, b] = [Math.abs(n), d];
  while (b) [a, b] = [b, a % b];
  const by = a || 1;
  return `${n / by}/${d / by}`;
}
