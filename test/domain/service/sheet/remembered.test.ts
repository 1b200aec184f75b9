// The sheet is asked for at every move of the cursor: under the same fields it is the same record, else another.
import assert from 'node:assert/strict';
import { service, settings } from '../cursor';
import type { SheetRequest } from '../../../../src/service/sheet/sheetAnswer';

const text = `tuning: DADGAD

D4 |0---|
A3 |0---|
G3 |0---|
D3 |0---|
A2 |0---|
D2 |0---|

tuning: standard

E4 |0---|
B3 |0---|
G3 |0---|
D3 |0---|
A2 |0---|
E2 |0---|
`;

describe('The tuning sheet: moves of the cursor', () => {
  const document = service.open(text, settings);
  const at = (line: number, request: SheetRequest = {}): object =>
    service.tuningSheet(document, { line, character: 0 }, request, settings);

  it('under the same fields the sheet is not worked out again', () => {
    assert.equal(at(3), at(4));
    assert.equal(at(3, { from: 'open D' }), at(4, { from: 'open D' }));
  });

  it('another tuning, another one to come from, and the same one by another name are other sheets', () => {
    assert.notDeepEqual(at(3), at(12));
    assert.notDeepEqual(at(3), at(3, { from: 'open D' }));
    const named = JSON.stringify(at(3, { from: 'open D' }));
    assert.notEqual(named, JSON.stringify(at(3, { from: 'D A D Gb A D' })));
  });

  it('an edit of the fields is followed', () => {
    const before = at(3);
    document.edit([
      { range: { start: { line: 0, character: 8 }, end: { line: 0, character: 14 } }, newText: 'open D' },
    ]);
    assert.notDeepEqual(at(3), before);
  });

  it('what a name of the user means is read anew', () => {
    const own = (value: string): object =>
      service.tuningSheet(
        document,
        { line: 12, character: 0 },
        { from: 'harbour' },
        { ...settings, tunings: { harbour: value } },
      );
    assert.notDeepEqual(own('C2 G2 D3 G3 B3 D4'), own('C2 G2 C3 G3 C4 E4'));
  });
});
