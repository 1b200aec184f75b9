import assert from 'node:assert/strict';
import { INSTRUMENTS } from '../../../src/instrument/instruments';
import { isReentrant } from '../../../src/instrument/isReentrant';
import { nameKey } from '../../../src/instrument/nameMatching';
import { createFingerboard } from '../../../src/instrument/sounding';
import { allTunings, findTuning, tuningsFor } from '../../../src/instrument/tunings';
import { formatTuningNotes } from '../../../src/instrument/tuningFormat';
import { formatPitchName } from '../../../src/music/noteName';
import { instrument, tuning } from './read';
import { TUNING_TABLE } from './tuningTable';

describe('tunings of the trade', () => {
  it('covers the 62 rows of the handbook table', () => {
    assert.deepEqual(
      [...new Set(TUNING_TABLE.map(({ row }) => row))],
      Array.from({ length: 62 }, (_, index) => index + 1),
    );
  });

  for (const row of TUNING_TABLE) {
    describe(`#${row.row} ${row.instrument}, ${row.name} (${row.source})`, () => {
      it('is found by its name, in any case, with or without spaces and hyphens', () => {
        for (const name of [
          row.name,
          row.name.toUpperCase(),
          row.name.replace(/[ -]/g, ''),
          `${row.name} tuning`,
        ]) {
          assert.equal(formatTuningNotes(tuning(name, row.instrument)), row.notes, name);
        }
      });

      // T5: the recipe for tuning by unisons.
      it('gives each next open note at the fret that players count', () => {
        const board = createFingerboard(tuning(row.name, row.instrument), undefined, 36);
        const steps = row.frets.map((_, index) => board.openMidi(index + 1) - board.openMidi(index));
        assert.deepEqual(steps, row.frets);
        row.frets.forEach((fret, index) => {
          if (fret < 0) return;
          assert.equal(board.fretFor(index, board.openMidi(index + 1)), fret);
          assert.equal(board.pitches(index, fret)?.[0], board.openMidi(index + 1));
        });
      });
    });
  }

  it('puts string 1 two octaves above string 6 in standard tuning (T5)', () => {
    const board = createFingerboard(tuning('standard'), undefined, 22);
    assert.equal(board.openMidi(5) - board.openMidi(0), 24);
  });

  it('makes the banjo’s fifth string the note of string 1 at fret 5 (row 55, [S])', () => {
    const board = createFingerboard(tuning('open G', 'banjo'), undefined, 22);
    assert.deepEqual(board.pitches(4, 5), [board.openMidi(0)]);
  });

  it('knows which tunings are re-entrant (common practice, no source)', () => {
    const reentrant = TUNING_TABLE.filter((row) => isReentrant(tuning(row.name, row.instrument)));
    assert.deepEqual([...new Set(reentrant.map(({ row }) => row))], [35, 49, 50, 55, 56, 57]);
    assert.equal(isReentrant(tuning('low G', 'ukulele')), false);
    assert.equal(isReentrant(tuning('E2 E2 A2')), false);
  });

  it('gives every instrument its usual tuning first, also by the name standard', () => {
    for (const each of INSTRUMENTS) {
      const usual = formatTuningNotes(tuning(each.usualTuning, each.name));
      assert.equal(usual, each.usualTuning, each.name);
      const [first] = tuningsFor(each);
      assert.ok(first);
      assert.equal(formatTuningNotes(tuning(first.name, each.name)), usual, each.name);
      assert.equal(formatTuningNotes(tuning('standard', each.name)), usual, each.name);
      assert.ok(findTuning('half step down', each), each.name);
      assert.ok(findTuning('whole step down', each), each.name);
    }
  });

  it('uses no name or alias for two tunings of one instrument', () => {
    for (const each of INSTRUMENTS) {
      const seen = new Map<string, string>();
      for (const { name, aliases } of tuningsFor(each)) {
        for (const key of new Set([name, ...aliases].map(nameKey))) {
          assert.equal(seen.get(key), undefined, `${each.name}: ${key}`);
          seen.set(key, name);
        }
      }
    }
  });

  it('uses a name that goes back to one person’s school as an alias only', () => {
    for (const alias of ['new standard', 'Orkney']) {
      assert.ok(findTuning(alias, instrument('guitar')), alias);
      assert.ok(!allTunings().some(({ name }) => nameKey(name) === nameKey(alias)), alias);
    }
  });

  it('gives the same tuning for its bare letters, save where another tuning has the same letters', () => {
    const others = new Set(['guitar high strung', 'classical guitar high strung', 'ukulele low G']);
    for (const each of allTunings()) {
      const letters = each.strings.map(({ pitches }) => formatPitchName(pitches[0].name)).join(' ');
      const read = formatTuningNotes(tuning(letters, each.instrument));
      const own = formatTuningNotes({ strings: each.strings, name: undefined, text: '' });
      if (others.has(`${each.instrument} ${each.name}`)) assert.notEqual(read, own, each.name);
      else assert.equal(read, own, `${each.instrument}, ${each.name}: ${letters}`);
    }
  });
});
