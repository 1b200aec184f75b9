import assert from 'node:assert/strict';
import { isGrave, noticeText, reportText } from '../../../src/extension/reportText';

const report = { notesIn: 6, kept: 6, moved: 0, unplaced: [], remarks: ['All stay.'] };
const caution = 'Tune up slowly and keep your eyes away from the strings.';

describe('what is told of a change', () => {
  it('the counts in one line', () => {
    assert.equal(noticeText('Converted to lute', report), 'Converted to lute: 6 kept, 0 moved, 0 unplaced.');
    assert.equal(isGrave(report), false);
  });
  it('what is new in one line, where there were no notes', () => {
    const report = {
      notesIn: 0,
      kept: 0,
      moved: 0,
      unplaced: [],
      remarks: [
        '3 of 4 chords have their shapes, chosen so that the hand moves least.',
        'Bar 2: H is left empty.',
      ],
    };
    assert.equal(noticeText('Filled chords', report), 'Filled chords: 3 of 4 chords have their shapes.');
    const text = reportText('a.pegbox', { asked: 'Fill chords', report });
    assert.doesNotMatch(text, /0 notes|0 kept/);
    assert.match(text, /Bar 2: H is left empty/);
  });

  it('a caution in full, without a look at the report', () => {
    const raised = { ...report, remarks: [...report.remarks, caution], cautions: [caution] };
    assert.ok(noticeText('Converted to open E', raised).endsWith(`unplaced. ${caution}`));
    assert.equal(isGrave(raised), true);
  });
  it('a caution once only in the report, which lists all remarks', () => {
    const raised = { ...report, remarks: [caution], cautions: [caution] };
    const text = reportText('pier.pegbox', { asked: 'Convert', report: raised }).replace(/\s+/g, ' ');
    assert.equal(text.split(caution).length, 2);
  });
  it('a note without a place is grave', () => {
    assert.equal(
      isGrave({ ...report, kept: 5, unplaced: [{ bar: 1, name: 'D2', reason: 'too low' }] }),
      true,
    );
  });
});
