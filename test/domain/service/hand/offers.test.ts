import assert from 'node:assert/strict';
import { Document } from '../../../../src/notation/document';
import { convert } from '../../../../src/service/change/convert';
import type { Change, ConvertRequest, Offer } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { changeOrRefusal, nothingIsLost, onRandomChords, taken } from './work';

/* "When it does not fit": the offers, in their order, each giving what its title says. No outside source. */

const REQUESTS: readonly Omit<ConvertRequest, 'range'>[] = [
  { tuning: 'DADGAD' },
  { tuning: 'open D' },
  { tuning: 'standard' },
  { instrument: 'ukulele' },
  { tuning: 'F2 A2 D3 G3 B3 E4' },
  { tuning: 'open G', keep: 'function', key: 'G' },
  { tuning: 'DADGAD', closed: true },
];

const KINDS = [/^Leave out /, /^Move \d+ notes? to another octave/, /^Move the whole|^Leave the/, /capo/];

describe('offers where notes have no place', () => {
  it('each gives what its title says, and they stand in the order of least loss', () => {
    const seen = new Set<number>();
    onRandomChords(
      (text, choice) => {
        const request = { range: undefined, ...REQUESTS[choice % REQUESTS.length] };
        const change = changeOrRefusal(convert(new Document(text), request, DEFAULT_SETTINGS));
        if (!change) return;
        const { report } = change;
        if (report.unplaced.length === 0) assert.equal(report.offers, undefined);
        const kinds = (report.offers ?? []).map(({ title }) => KINDS.findIndex((kind) => kind.test(title)));
        assert.deepEqual(kinds, [...kinds].sort(), JSON.stringify(report));
        for (const kind of kinds) seen.add(kind);
        for (const offer of report.offers ?? []) gives(text, offer, change);
      },
      Number(process.env['HAND_RUNS'] ?? 40),
    );
    assert.ok(seen.has(0) && seen.has(1), [...seen].join());
  });

  it('the smallest move that fits: one half step up where the lowest string went up by one', () => {
    const text = `tuning: standard

E4 |----|
B3 |----|
G3 |----|
D3 |----|
A2 |----|
E2 |0---|
`;
    const change = changeOrRefusal(
      convert(new Document(text), { range: undefined, tuning: 'F2 A2 D3 G3 B3 E4' }, DEFAULT_SETTINGS),
    );
    assert.deepEqual(
      change?.report.offers?.map(({ title }) => title),
      [
        'Move 1 note to another octave; every note has a place',
        'Move the whole passage up 1 half step; every note has a place',
      ],
    );
  });

  it('a tuning of too few strings, with no place for a single note, changes nothing and says what to do', () => {
    const result = convert(
      new Document('tuning: standard\n\nE4 |----|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |0---|\n'),
      { range: undefined, tuning: 'B3 E4' },
      DEFAULT_SETTINGS,
    );
    assert.ok('error' in result);
    assert.match(result.error, /which has 2 strings; choose a tuning with more strings/);
  });

  it('a doubled inner note goes alone: bass, top and every pitch class stay, and the text says what went', () => {
    // A bar chord of F: C3, F3 and A3 cannot all be held in this tuning together with the rest.
    const text = `tuning: standard

E4 |1---|
B3 |1---|
G3 |2---|
D3 |3---|
A2 |3---|
E2 |1---|
`;
    const request = { range: undefined, tuning: 'open G', leaveOut: 'doubled' as const };
    const change = changeOrRefusal(convert(new Document(text), request, DEFAULT_SETTINGS));
    assert.ok(change);
    for (const { name } of change.report.unplaced) assert.match(name, /^(C3|F3|C4)$/);
    const after = taken(text, change).text();
    for (const { name } of change.report.unplaced)
      assert.match(after, new RegExp(`^omitted \\|.*${name}`, 'm'));
  });
});

function gives(text: string, offer: Offer, before: Change): void {
  const result = convert(new Document(text), offer.request, DEFAULT_SETTINGS);
  assert.ok(!('error' in result), `${offer.title}: ${'error' in result ? result.error : ''}\n${text}`);
  const { report } = result;
  const told = `${offer.title}\n${nothingIsLost(text, undefined, result).told}`;
  if (offer.title.endsWith('every note has a place')) assert.equal(report.unplaced.length, 0, told);
  const rest = /(\d+) (?:is|are) still left out/.exec(offer.title);
  if (rest) {
    assert.equal(report.unplaced.length, Number(rest[1]), told);
    assert.ok(report.unplaced.length < before.report.unplaced.length, told);
  }
  const left = /^Leave out (\d+) doubled/.exec(offer.title);
  if (left) {
    assert.equal(report.unplaced.length, Number(left[1]), told);
    // The function moves what it keeps; the sound can be held against the text.
    if (offer.request.keep !== 'function')
      assert.deepEqual(chords(taken(text, result)), chords(new Document(text)), told);
  }
}

/** For each moment the lowest and highest pitch and the pitch classes. */
function chords(document: Document): unknown[] {
  const moments = new Map<string, number[]>();
  for (const { reading } of document.systems)
    for (const { onset, pitches } of reading.notes) {
      const key = `${onset.n}/${onset.d}`;
      moments.set(key, [...(moments.get(key) ?? []), pitches[0]?.midi ?? NaN]);
    }
  return [...moments].map(([key, midis]) => {
    const classes = [...new Set(midis.map((midi) => midi % 12))].sort((a, b) => a - b);
    return [key, Math.min(...midis), Math.max(...midis), ...classes];
  });
}
