import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { CompareAnswer } from '../../../../src/service/compare/compareAnswer';
import { demoSongs } from '../../support/lines';
import { randomFrom } from '../../support/random';
import { randomSong } from '../change/randomSong';
import { transposed } from '../find/transposed';
import { service, settings } from '../cursor';

/* What a change of a text is called is common practice, no source; the laws hold whatever it is called. */

const open = (text: string) => service.open(text, settings);
const compare = (before: string, after: string): CompareAnswer => service.compare(open(before), open(after));

/** `kind: words` of every change, each bar's after its title. */
function told({ bars }: CompareAnswer): readonly string[] {
  return bars.flatMap(({ title, changes }) => [
    title,
    ...changes.map(({ kind, words }) => `${kind}: ${words}`),
  ]);
}

const SONG = `tuning: DADGAD

[Verse]
D4 |0---2---4---5---|7---5---4---2---|0-------2-------|
A3 |----------------|----------------|0-------0-------|
D2 |0---------------|0---------------|0---------------|
`;

describe('comparing two versions', () => {
  it('says of one note what became of it', () => {
    const change = (from: string, to: string): readonly string[] =>
      told(compare(SONG, SONG.replace(from, to)));
    assert.deepEqual(change('0---2---4---5---', '0---3---4---5---'), [
      'Bar 1',
      'repitched: beat 2: E4 on string 1, fret 2 before, now F4 on string 1, fret 3',
    ]);
    assert.deepEqual(change('0---2---4---5---', '0---2---4-----5-'), [
      'Bar 1',
      'retimed: G4 on string 1, fret 5: beat 4 before, now beat 4 &',
    ]);
    assert.deepEqual(change('0---2---4---5---', '0---2---4-------'), [
      'Bar 1',
      'lost: G4 on string 1, fret 5, beat 4',
    ]);
    assert.deepEqual(change('0-------2-------', '0---0---2-------'), [
      'Bar 3',
      'added: D4 on string 1, open, beat 2',
    ]);
    assert.deepEqual(change('0---2---4---5---', '0---2---4---5~--'), [
      'Bar 1',
      'played: G4 on string 1, fret 5, beat 4',
    ]);
    const moved = SONG.replace('0---2---4---5---', '----2---4---5---').replace('A3 |--', 'A3 |5-');
    assert.deepEqual(told(compare(SONG, moved)), [
      'Bar 1',
      'elsewhere: D4, beat 1: string 1, open before, now string 2, fret 5',
    ]);
  });

  it('lines bars up where one was put in or taken out', () => {
    const longer = SONG.replace('2---|0-', '2---|9---9---|0-')
      .replace(/^A3 .*$/m, 'A3 |----------------|----------------|--------|0-------0-------|')
      .replace(/^D2 .*$/m, 'D2 |0---------------|0---------------|--------|0---------------|');
    const { counts, bars } = compare(SONG, longer);
    assert.deepEqual([counts.same, counts.added, counts.lost], [counts.before, 2, 0]);
    assert.deepEqual(
      bars.map(({ title, section, before, after }) => [title, section, before, after]),
      [['Bar 3, new', 'Verse', null, 3]],
    );
    const back = compare(longer, SONG);
    assert.deepEqual([back.counts.added, back.counts.lost], [0, 2]);
    assert.equal(back.bars[0]?.title, 'Bar 3 before, gone');
  });

  it('tells a bar that was shifted from one that was transposed', () => {
    const shifted = compare('E4 |0---2---4-------|\n', 'E4 |----0---2---4---|\n');
    assert.deepEqual([shifted.counts.retimed, shifted.counts.repitched], [3, 0]);
    const higher = compare('E4 |0---2---4-------|\n', 'E4 |2---4---6-------|\n');
    assert.deepEqual([higher.counts.retimed, higher.counts.repitched], [0, 3]);
  });

  it('follows a note that was pushed over a bar sign', () => {
    const { counts, bars } = compare('E4 |0---2---4---5---|--------|\n', 'E4 |0---2---4-------|5-------|\n');
    assert.deepEqual([counts.same, counts.retimed, counts.lost, counts.added], [3, 1, 0, 0]);
    assert.match(
      bars[0]?.changes[0]?.words ?? '',
      /^A4 on string 1, fret 5: beat 4 of bar 1 before, now beat 1$/,
    );
  });

  it('tells fields that changed, and a part under another name', () => {
    const { fields, counts } = compare(SONG, SONG.replace('DADGAD', 'DADGAD\ncapo: 2\nkey: D'));
    assert.deepEqual(
      fields.map(({ field, before, after }) => `${field}: ${before} → ${after}`),
      ['capo: none → 2', 'key: none → D major'],
    );
    assert.equal(counts.repitched, counts.before);
    const parts = (name: string) => `part: low\n\nE2 |0---3---|\n\npart: ${name}\n\nE4 |0---2---|\n`;
    const renamed = compare(parts('lead'), parts('first guitar'));
    assert.equal(renamed.counts.same, 4);
    assert.deepEqual(renamed.remarks.slice(1), ['The part lead is now called first guitar.']);
    assert.deepEqual(compare('part: low\n\nE2 |0---3---|\n', parts('lead')).remarks.slice(1), [
      'The part lead is new.',
    ]);
  });

  it('tells a piece of another tuning with the same sound as moved on the neck', () => {
    const before = 'E4 |0---3---|\nD3 |0-------|\n';
    const after = 'tuning: DADGAD\n\nD4 |2---5---|\nD3 |0-------|\n';
    const { counts } = compare(before, after);
    assert.deepEqual([counts.elsewhere, counts.same, counts.lost, counts.added], [2, 1, 0, 0]);
  });

  it('finds nothing between a text and itself', () => {
    for (const song of demoSongs()) assert.deepEqual(compare(song, song).bars, []);
    fc.assert(
      fc.property(randomSong, (text) => {
        const { counts, bars, fields } = compare(text, text);
        assert.deepEqual([bars, fields, counts.same], [[], [], counts.before]);
      }),
      { numRuns: 40 },
    );
  });

  it('counts every note of both versions once, whatever they are', () => {
    fc.assert(
      fc.property(randomSong, randomSong, (before, after) => holds(compare(before, after), before, after)),
      { numRuns: 60 },
    );
  });

  it('finds random edits: a note taken out is lost, a fret changed is another pitch, all else is the same', () => {
    const random = randomFrom(11);
    for (const song of demoSongs()) {
      for (let i = 0; i < 25; i++) {
        const lines = song.split('\n');
        const frets = lines.flatMap((line, at) =>
          /^[A-G][#b]?\d\s*\|/.test(line)
            ? [...line.matchAll(/(?<=[-|])[0-9](?=--)/g)].map(({ index }) => ({ at, index }))
            : [],
        );
        const chosen = frets[random.below(frets.length)];
        assert.ok(chosen);
        const { at, index } = chosen;
        const line = lines[at] ?? '';
        const lost = random.chance(0.5);
        const sign = lost ? '-' : String((Number(line[index]) + 1) % 10);
        lines[at] = line.slice(0, index) + sign + line.slice(index + 1);
        const after = lines.join('\n');
        const answer = compare(song, after);
        holds(answer, song, after);
        const { counts } = answer;
        // A fret that begins a slide, or is hammered from, changes how its neighbour is played, too.
        assert.ok(counts.same >= counts.before - 2, `${line}\n${lines[at] ?? ''}\n${JSON.stringify(counts)}`);
        if (lost) assert.ok(counts.lost >= 1 && counts.added === 0);
        else assert.ok(counts.repitched === 1 && counts.lost + counts.added === 0, JSON.stringify(counts));
      }
    }
  });

  it('calls every note of a transposed piece repitched, or played anew where the place had to change', () => {
    fc.assert(
      fc.property(randomSong, (text) => {
        const moved = transposed(text, 1);
        if (moved === undefined) return;
        const { counts } = compare(text, moved);
        holds(compare(text, moved), text, moved);
        assert.ok(counts.repitched >= counts.before / 2 || counts.before < 8, JSON.stringify(counts));
      }),
      { numRuns: 6 },
    );
  });
});

/** The sums, by the program's own list of notes: two pitches of a course are one note. */
function holds({ counts, bars }: CompareAnswer, before: string, after: string): void {
  const { same, elsewhere, retimed, repitched, played, lost, added } = counts;
  const both = same + elsewhere + retimed + repitched + played;
  const notes = (text: string): number =>
    new Set(service.notes(open(text)).map(({ line, column }) => `${line}:${column}`)).size;
  assert.deepEqual([both + lost, both + added], [counts.before, counts.after]);
  assert.deepEqual([counts.before, counts.after], [notes(before), notes(after)]);
  const changes = bars.flatMap((bar) => bar.changes);
  assert.equal(changes.length, elsewhere + retimed + repitched + played + lost + added);
}
