import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatTuningNotes } from '../../../../src/instrument/tuningFormat';
import { Document } from '../../../../src/notation/document';
import { applyFit } from '../../../../src/service/singer/applyFit';
import { fitSinger } from '../../../../src/service/singer/fitSinger';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { notesOf, slicesIn } from '../../../../src/service/change/slices';
import { randomSong } from '../change/randomSong';

/* Laws of our own: no source states them. */

/** Every note's bar, string, fret, touching point and sounding pitches. */
function played(document: Document, up = 0): string[] {
  return slicesIn(document, undefined).flatMap((slice) =>
    notesOf(slice).map(({ note }) => {
      const pitches = note.pitches.map(({ midi }) => (midi + up).toFixed(2)).join('+');
      const time = `${note.onset.n}/${note.onset.d}`;
      return `${slice.index} ${time} ${note.string}:${note.fret ?? 'x'}:${note.touched ?? ''} ${pitches}`;
    }),
  );
}

function after(document: Document, capoBy: number, tuningBy: number): Document {
  const change = applyFit(document, { range: undefined, capoBy, tuningBy }, DEFAULT_SETTINGS);
  assert.ok(!('error' in change), 'error' in change ? change.error : '');
  assert.ok(change.edits.length <= 1, 'one edit');
  assert.equal(change.report.unplaced.length, 0);
  const next = new Document(document.text());
  next.edit(change.edits);
  return new Document(next.text());
}

/** The sentence of a refusal. */
function refusal(document: Document, capoBy: number, tuningBy: number): string {
  const change = applyFit(document, { range: undefined, capoBy, tuningBy }, DEFAULT_SETTINGS);
  assert.ok('error' in change, 'it is done');
  return change.error;
}

describe('a fit as a change of the text', () => {
  it('moves every pitch by exactly the half steps that were told, and no fret', () => {
    let applied = 0;
    fc.assert(
      fc.property(randomSong, fc.nat(11), (text, choice) => {
        const document = new Document(text);
        const request = { range: undefined, compass: 'A3-D5', low: 'D4', high: 'E5' };
        const answer = fitSinger(document, request, DEFAULT_SETTINGS);
        assert.ok(!('error' in answer), text);
        const way = answer.ways[choice % answer.ways.length];
        if (!way?.request) return;
        applied++;
        const next = after(document, way.request.capoBy, way.request.tuningBy);
        assert.deepEqual(
          played(next),
          played(document, way.halfSteps),
          `${way.title}\n${text}\n${next.text()}`,
        );
      }),
      { numRuns: 60 },
    );
    assert.ok(applied > 20);
  });

  const SONG = `tuning: DADGAD
capo: 1
key: G

chords |G       |C7/E    |
D4     |0---2---|0-------|
A3     |0-------|2-------|
G3     |0-------|0-------|
D3     |--------|--------|
A2     |--------|--------|
D2     |5-------|--------|
`;

  it('the capo alone leaves key, chords and labels', () => {
    const next = after(new Document(SONG), 2, 0);
    assert.equal(next.text(), SONG.replace('capo: 1', 'capo: 3'));
  });

  it('the tuning takes key, chords and labels with it; there and back gives the text again', () => {
    const lower = after(new Document(SONG), -1, -1);
    const text = lower.text();
    assert.match(text, /^tuning: DADGAD -1$/m);
    assert.match(text, /^capo: none$/m);
    assert.match(text, /^key: F#$/m);
    assert.match(text, /\|F# +\|B7\/D# +\|/);
    assert.equal(
      lower.systems[0]?.header.tuning && formatTuningNotes(lower.systems[0].header.tuning),
      'Db2 Ab2 Db3 Gb3 Ab3 Db4',
    );
    const back = after(lower, 1, 1);
    assert.equal(back.text(), SONG);
  });

  it('lowered tunings are written as players name them', () => {
    const named = (fields: string, by: number): string => {
      const next = after(
        new Document(`${fields}\n\nE4 |0---|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |----|\n`),
        0,
        by,
      );
      return /^tuning: *(.*)$/m.exec(next.text())?.[1] ?? '';
    };
    assert.equal(named('tuning: standard', -1), 'half step down');
    assert.equal(named('tuning: half step down', -2), 'standard -3');
    assert.equal(named('tuning: standard -3', 3), 'standard');
    assert.equal(named('tuning: open G', -1), 'open G -1');
    assert.equal(named('tuning: C2 A2 D3 G3 B3 E4', -1).split(' ').length, 6);
  });

  it('two parts with capos of their own move alike', () => {
    const part = (name: string, capo: number): string =>
      `part: ${name}\ncapo: ${capo}\n\nE4 |0---|\nB3 |1---|\n\n`;
    const document = new Document(part('one', 2) + part('two', 5));
    const next = after(document, -2, 0);
    assert.deepEqual(played(next), played(document, -2));
    assert.match(next.text(), /capo: none[^]*capo: 3/);
  });

  it('what cannot be done is told in a sentence', () => {
    const document = new Document(SONG);
    const told = (capoBy: number, tuningBy: number): string => refusal(document, capoBy, tuningBy);
    assert.match(told(-2, 0), /The capo is at fret 1 and cannot go down by 2/);
    assert.match(told(30, 0), /A capo stands at a fret from 1 to 21/);
    assert.match(told(0.5, 0), /whole number of frets/);
    assert.match(told(0, 13), /from −12 to 12/);
    assert.match(refusal(new Document(SONG.replace('capo: 1', 'capo: 2 on 3')), 1, 0), /partial capo stays/);
    assert.match(refusal(new Document(''), 1, 0), /no tab/);
  });
});
