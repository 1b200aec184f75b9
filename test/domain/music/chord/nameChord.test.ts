import assert from 'node:assert/strict';
import fc from 'fast-check';
import { nameChord } from '../../../../src/music/chord/nameChord';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { writtenMask } from '../../../../src/music/chord/writtenChord';
import { pitchClassOf } from '../../../../src/music/noteName';

describe('What kind of thing sounds', () => {
  for (const [midis, kind, name, words] of [
    [[], 'silence', undefined, undefined],
    [[50], 'note', 'D', ''],
    [[50, 62], 'note', 'D', 'octaves'],
    [[50, 50], 'note', 'D', 'unison'],
    [[50, 57], 'power', 'D5', 'power chord, no third'],
    [[45, 50, 57], 'power', 'D5/A', 'power chord over its fifth, no third'],
    [[40, 56], 'interval', 'major tenth', ''],
    [[40, 55], 'interval', 'minor tenth', ''],
    [[36, 42], 'interval', 'tritone', ''],
    [[60, 61], 'interval', 'minor second', ''],
    [[40, 80], 'interval', 'three octaves and a major third', ''],
    [[48, 52, 55], 'chord', 'C', 'major'],
    [[52, 55, 60], 'chord', 'C/E', 'major, third in the bass'],
    [[50, 52, 55, 60], 'chord', 'C/D', 'major, D in the bass'],
    [[48, 52, 58], 'chord', 'C7', 'dominant seventh, without the fifth'],
    [[60, 61, 62, 63, 64, 65], 'unnamed', undefined, undefined],
  ] as const) {
    it(`${midis.join(' ')} is ${kind}${name === undefined ? '' : `: ${name}`}`, () => {
      const naming = nameChord(midis);
      assert.equal(naming.kind, kind);
      assert.equal(naming.names[0]?.name, name);
      assert.equal(naming.names[0]?.words, words);
    });
  }

  it('two notes a third or a sixth apart may stand for a chord, as an alternative only', () => {
    const names = (midis: number[]) => nameChord(midis).names.map(({ name }) => name);
    assert.deepEqual(names([48, 52]), ['major third', 'C(no5)']);
    assert.deepEqual(names([48, 57]), ['major sixth', 'Am(no5)/C']);
    assert.deepEqual(names([48, 58]), ['minor seventh']);
  });

  it('tells what is left out, and says when the root does not sound', () => {
    const rootless = nameChord([52, 55, 58]).names.at(-1);
    assert.equal(nameChord([48, 52, 58]).names[0]?.omitted.join(), '5');
    assert.ok(rootless);
    assert.equal(rootless.name, 'C7 (no root)');
    assert.match(rootless.words, /root not sounding/);
  });

  it('a seventh partial, 31 cents flat, stays out; a string tuned 14 cents flat stays in', () => {
    assert.equal(nameChord([48, 52, 55, 57.69]).names[0]?.name, 'C');
    assert.equal(nameChord([48, 51.86, 55]).names[0]?.name, 'C');
    assert.equal(nameChord([57.69]).kind, 'silence');
  });

  it('the spelled notes go from the bass up', () => {
    const notes = nameChord([52, 55, 60]).notes.map(({ letter }) => letter);
    assert.deepEqual(notes, ['E', 'G', 'C']);
  });

  it('hands out frozen records', () => {
    const naming = nameChord([48, 52, 55]);
    const [first] = naming.names;
    assert.ok(Object.isFrozen(naming) && Object.isFrozen(naming.names) && Object.isFrozen(naming.notes));
    assert.ok(first && Object.isFrozen(first) && Object.isFrozen(first.tones) && Object.isFrozen(first.root));
    assert.ok(Object.isFrozen(first.omitted) && Object.isFrozen(first.bass));
  });

  it('takes anything but notes as silence', () => {
    assert.equal(nameChord([NaN, Infinity, -Infinity]).kind, 'silence');
  });
});

describe('Symmetric and shared sets: the bass decides (common practice, no source)', () => {
  for (const [midis, first, other] of [
    [[48, 52, 55, 57], 'C6', 'Am7/C'],
    [[45, 48, 52, 55], 'Am7', 'C6/A'],
    [[43, 48, 52, 57], 'Am/G', 'Am7/G'],
    [[40, 48, 55, 57], 'Am7/E', 'C6/E'],
    [[48, 51, 55, 57], 'Cm6', 'Am7b5/C'],
    [[45, 48, 51, 55], 'Am7b5', 'Cm6/A'],
    [[48, 50, 55], 'Csus2', 'Gsus4/C'],
    [[43, 48, 50], 'Gsus4', 'Csus2/G'],
    [[48, 52, 56], 'Caug', undefined],
    [[52, 56, 60], 'Eaug', undefined],
    [[48, 51, 54, 57], 'Cdim7', undefined],
    [[48, 52, 57], 'Am/C', 'C6'],
    [[48, 53, 58], 'Fsus4/C', 'C7sus4'],
    [[48, 52, 54, 58], 'C7b5', undefined],
  ] as const) {
    it(`${first} over ${midis.join(' ')}`, () => {
      const names = nameChord(midis).names.map(({ name }) => name);
      assert.equal(names[0], first);
      if (other) assert.ok(names.includes(other), names.join(' '));
      assert.ok(names.length <= 4);
    });
  }
});

describe('G9: laws of naming', () => {
  const chords = fc.uniqueArray(fc.integer({ min: 28, max: 76 }), { minLength: 1, maxLength: 7 });
  /** Names with roots, basses and notes as numbers, so that they can be moved. */
  const shapeOf = (midis: readonly number[], by = 0) =>
    nameChord(midis).names.map(({ name, root, bass, cost }) => ({
      root: (pitchClassOf(root) + by) % 12,
      bass: (pitchClassOf(bass) + by) % 12,
      cost,
      symbol: name.replace(/^[A-G][#b]*/, '').replace(/\/[A-G][#b]*/, '/'),
    }));

  it('moved by half steps, the names move', () => {
    fc.assert(
      fc.property(chords, fc.integer({ min: 1, max: 11 }), (midis, by) => {
        assert.deepEqual(shapeOf(midis.map((midi) => midi + by)), shapeOf(midis, by));
      }),
      { numRuns: 2000 },
    );
  });

  it('order does not count', () => {
    fc.assert(
      fc.property(chords, (midis) => {
        assert.deepEqual(nameChord([...midis].reverse()), nameChord(midis));
      }),
      { numRuns: 2000 },
    );
  });

  it('an octave above a note that sounds changes no chord', () => {
    fc.assert(
      fc.property(chords, fc.nat(6), (midis, which) => {
        const naming = nameChord(midis);
        if (naming.kind === 'note') return;
        const doubled = midis[which % midis.length] ?? 60;
        assert.deepEqual(nameChord([...midis, doubled + 12]), naming);
      }),
      { numRuns: 2000 },
    );
  });

  it('every name of a chord reads back to the notes', () => {
    fc.assert(
      fc.property(chords, (midis) => {
        const { kind, names } = nameChord(midis);
        if (kind !== 'chord' && kind !== 'power') return;
        for (const { name } of names) {
          const read = readChordName(name);
          assert.ok(read.ok && read.value.root, name);
          const root = pitchClassOf(read.value.root);
          const { bass } = read.value;
          const claimed = writtenMask(read.value) | (bass ? 1 << ((pitchClassOf(bass) - root + 12) % 12) : 0);
          for (const midi of midis)
            assert.ok(claimed & (1 << ((midi - root + 120) % 12)), `${name} has ${midi}`);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('equal contexts give equal names, whether they are one record or two', () => {
    const tuningNames = [{ letter: 'E', alter: -1 } as const];
    assert.equal(
      nameChord([44, 47, 51], { tuningNames }),
      nameChord([44, 47, 51], { tuningNames: [...tuningNames] }),
    );
  });
});
