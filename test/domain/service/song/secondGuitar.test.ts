import assert from 'node:assert/strict';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { overlapOf, reachInto } from '../../../../src/service/song/register';
import { fill, LEDGER, opened, second, service } from './song';

/** Sounding pitches of the notes of a part at each moment, by bar and time. */
function moments(text: string, part: string): Map<string, number[]> {
  const document = opened(text);
  const found = new Map<string, number[]>();
  for (const system of document.systems) {
    if (system.header.part !== part) continue;
    const { onset: start } = document.placeOf(system);
    for (const { onset, pitches } of system.reading.notes) {
      const key = String(start.n / start.d + onset.n / onset.d);
      found.set(key, [...(found.get(key) ?? []), ...pitches.map(({ midi }) => midi)]);
    }
  }
  return found;
}

function mean(midis: readonly number[]): number {
  return midis.reduce((sum, midi) => sum + midi, 0) / midis.length;
}

describe('a second guitar', () => {
  it('keeps out of the first one’s way, and the report has the measure right', () => {
    const filled = fill(LEDGER).text;
    const { text, report, edits } = second(filled, { name: 'high guitar' });
    assert.equal(edits, 1);
    const first = moments(text, 'guitar');
    const other = moments(text, 'high guitar');
    assert.deepEqual([...other.keys()], [...first.keys()]);
    let [notes, shared] = [0, 0];
    for (const [at, midis] of other) {
      const those = first.get(at) ?? [];
      notes += midis.length;
      shared += midis.filter((midi) => those.includes(midi)).length;
      assert.ok(mean(midis) > mean(those) + 3, `${midis.join(' ')} over ${those.join(' ')}`);
    }
    assert.ok(shared < notes / 2);
    const told = new RegExp(
      `of ${notes} notes ${shared === 0 ? 'none has' : `${shared} ha(?:s|ve)`} a pitch`,
    );
    assert.match(report.remarks[0] ?? '', told);
  });

  it('plays the same whether the first part is written or not', () => {
    const rows = (text: string): string[] =>
      opened(text)
        .systems.filter(({ header }) => header.part === 'other')
        .flatMap(({ lines }) => lines.map((line) => line.text));
    const bare = second(LEDGER, { name: 'other' });
    const written = second(fill(LEDGER).text, { name: 'other' });
    assert.deepEqual(rows(bare.text), rows(written.text));
  });

  it('names its chords as they are played under its own capo, and its key', () => {
    const { text, report } = second(LEDGER, { name: 'other', tuning: 'standard', capo: '5' });
    const [, after = ''] = text.split('part:   other');
    assert.ok(after.includes('tuning: standard\ncapo:   5\nkey:    D\n'), after);
    // G under a capo at fret 5 is played as D (playing conventions §5.2).
    assert.match(after, /chords \|D {15}\|G {7}D {7}\|/);
    assert.ok(report.remarks.includes('Its chords are named as they are played with the capo at fret 5.'));
    // Words are sung once.
    assert.ok(!after.slice(0, after.indexOf('part:')).includes('words'));
  });

  it('has empty bars where the passage does not reach, so that bars count alike', () => {
    const document = opened(LEDGER);
    const line = document.systems[1]?.firstLine ?? 0;
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    const result = service.secondGuitar(document, { range, name: 'other' }, DEFAULT_SETTINGS);
    assert.ok(!('error' in result));
    document.edit(result.edits);
    const [, other] = document.systems
      .filter(({ header }) => header.part === 'other')
      .map(({ reading }) => reading.notes.length);
    const [empty] = document.systems.filter(({ header }) => header.part === 'other');
    assert.equal(empty?.reading.notes.length, 0);
    assert.ok((other ?? 0) > 0);
  });

  it('refuses a name that is taken, a tuning or a capo that cannot be read', () => {
    const ask = (more: object): unknown =>
      service.secondGuitar(
        opened(`part: low\n${LEDGER}`),
        { range: undefined, name: 'other', ...more },
        DEFAULT_SETTINGS,
      );
    const error = (answer: unknown): string => (answer as { error?: string }).error ?? '';
    assert.match(error(ask({ name: 'low' })), /There is a part low already/);
    assert.match(error(ask({ name: ' ' })), /Give the new part a name/);
    assert.notEqual(error(ask({ tuning: 'no such tuning' })), '');
    assert.notEqual(error(ask({ capo: 'soup' })), '');
  });

  it('measures an overlap', () => {
    assert.deepEqual(overlapOf([67, 71, 79], [43, 55, 67]), { notes: 3, shared: 1, within: 1 });
    assert.equal(reachInto([60, 67, 72], [43, 67], 'above'), 7);
    assert.equal(reachInto([40, 45, 60], [43, 67], 'below'), 19);
    assert.equal(reachInto([60], [], 'above'), 0);
  });
});
