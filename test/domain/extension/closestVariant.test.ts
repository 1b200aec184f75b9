import assert from 'node:assert/strict';
import { closestVariant } from '../../../src/extension/preview/closestVariant';
import type { ChangeVariant } from '../../../src/server/requests';

const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
const report = { notesIn: 0, kept: 0, moved: 0, unplaced: [], remarks: [] };
const way = (newText: string): ChangeVariant => ({ edits: [{ range: nowhere, newText }], report });

describe('the way of a section that is nearest to what is shown', () => {
  const low = way('E4 |--0--|\nB3 |--1--|');
  const high = way('E4 |-----|\nB3 |--6--|');

  it('is the one whose lines are shown, in whatever order the ways come', () => {
    assert.equal(closestVariant([low, high], '[Verse]\nE4 |-----|\nB3 |--6--|\n'), high);
    assert.equal(closestVariant([high, low], '[Verse]\nE4 |--0--|\nB3 |--1--|\n'), low);
  });
  it('is the first where none is nearer than another', () => {
    assert.equal(closestVariant([low, high], 'something else'), low);
  });
  it('is none of none', () => {
    assert.equal(closestVariant([], ''), undefined);
  });
});
