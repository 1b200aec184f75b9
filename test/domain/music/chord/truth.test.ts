import assert from 'node:assert/strict';
import { ChordType } from 'tonal';
import { addedTypes, POWER, writtenTypes } from '../../../../src/music/chord/chordTypes';
import { compareChord } from '../../../../src/music/chord/compareChord';
import { nameChord } from '../../../../src/music/chord/nameChord';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { writtenMask } from '../../../../src/music/chord/writtenChord';
import { countReadings } from '../../../../src/music/chord/typeTable';
import { pitchClassOf, parsePitchName } from '../../../../src/music/noteName';
import { readKey, type Key } from '../../../../src/music/key';

const TYPES = [...writtenTypes(), ...addedTypes(), POWER];

function keyOf(text: string): Key {
  const read = readKey(text);
  assert.ok(read.ok);
  return read.value;
}

describe('G5: a printed name is true of what sounds, for every set of notes over every bass', () => {
  it('24,576 pairs: the reader of names says so, and no third is claimed that does not sound', () => {
    const contexts = [undefined, keyOf('C'), keyOf('Eb'), keyOf('F#m'), keyOf('A mixolydian')].map((key) => ({
      key,
    }));
    let [pairs, printed, unnamed] = [0, 0, 0];
    for (let mask = 1; mask < 4096; mask++) {
      for (let bass = 0; bass < 12; bass++) {
        if (!(mask & (1 << bass))) continue;
        const midis = [36 + bass];
        for (let i = 0; i < 12; i++) if (i !== bass && mask & (1 << i)) midis.push(60 + i);
        const context = contexts[pairs++ % contexts.length] ?? {};
        const { kind, names } = nameChord(midis, context);
        if (kind === 'unnamed') unnamed++;
        if (kind !== 'chord' && kind !== 'power' && kind !== 'unnamed') continue;
        for (const { name, root, tones } of names) {
          const read = readChordName(name);
          assert.ok(read.ok, name);
          assert.deepEqual(read.value.root, root, name);
          const above = (mask >> pitchClassOf(root)) | (mask << (12 - pitchClassOf(root)));
          assert.equal(
            tones.reduce((set, tone) => set | (1 << classOf(tone)), 0),
            mask,
            name,
          );
          if (read.value.rootNeed === 'may') {
            assert.equal(above & 1, 0, `${name}: a root that sounds is not missing`);
            continue;
          }
          printed++;
          assert.equal(
            compareChord(read.value, midis, context).verdict,
            'agrees',
            `${name} over ${midis.join(' ')}`,
          );
          const third = read.value.tones.find(({ degree }) => degree.number === 3);
          if (third)
            assert.ok(
              above & (1 << third.degree.halfSteps),
              `${name} claims a third over ${midis.join(' ')}`,
            );
        }
      }
    }
    console.log(`      ${pairs} pairs: ${printed} rooted names, ${unnamed} pairs without a name`);
    assert.equal(pairs, 24_576);
    assert.ok(printed > 15_000);
  });
});

function classOf(text: string): number {
  const name = parsePitchName(text);
  assert.ok(name, text);
  return pitchClassOf(name);
}

describe('The table of chord types', () => {
  it('holds 118 written-out types, no symbol and no full set twice', () => {
    assert.equal(writtenTypes().length + 1, 118);
    assert.equal(new Set(TYPES.map(({ symbol }) => symbol)).size, TYPES.length);
    assert.equal(new Set(TYPES.map(({ mask }) => mask)).size, TYPES.length);
    assert.ok(countReadings() > TYPES.length);
  });

  it('lets a fifth be missing only where it is perfect and something else defines the chord', () => {
    for (const { symbol, degrees, optional } of TYPES) {
      for (const { text, number } of optional) {
        assert.ok(text === '5' || number === 9 || number === 11, symbol);
        if (text === '5') assert.ok(degrees.length >= 3, symbol);
      }
      if (
        degrees.some(({ text }) => text === 'b13' || text === 'b6') &&
        writtenTypes().some((type) => type.symbol === symbol)
      ) {
        assert.ok(!optional.some(({ text }) => text === '5'), symbol);
      }
    }
  });

  it('means what tonal 6.4.3 means by the same symbol, but for 11, 13 and b13, where tonal leaves tones out', () => {
    let known = 0;
    for (const { symbol, mask } of TYPES) {
      const type = ChordType.get(symbol === '' ? 'M' : symbol);
      if (type.empty) continue;
      known++;
      const theirs = [...type.chroma].reduce((set, sign, i) => (sign === '1' ? set | (1 << i) : set), 0);
      if (/1[13]/.test(symbol)) assert.equal(theirs & ~mask, 0, symbol);
      // With two alterations tonal keeps the perfect fifth beside the flat one.
      else if (/b5.*9/.test(symbol)) assert.equal(mask & ~theirs, 0, symbol);
      else assert.equal(theirs, mask, symbol);
    }
    console.log(`      tonal knows ${known} of ${TYPES.length} symbols`);
    assert.ok(known >= 60);
  });

  it('names every chord of tonal, all but three under the root it gives them', () => {
    const namesOf = (chroma: string) =>
      nameChord([...chroma].flatMap((sign, i) => (sign === '1' ? [48 + i] : []))).names;
    const types = ChordType.all();
    for (const { chroma, aliases } of types) assert.ok(namesOf(chroma).length > 0, aliases[0]);
    const otherwise = types.filter(
      ({ chroma }) => !namesOf(chroma).some(({ root }) => root.letter === 'C' && root.alter === 0),
    );
    // Ab maj7#9 over C and the like: far simpler.
    assert.deepEqual(otherwise.map(({ aliases }) => aliases[0]).sort(), ['M9#5sus4', 'mb6M7', 'mb6b9']);
  });

  it('reads every one of its own symbols back to its tones', () => {
    const wider: string[] = [];
    for (const root of ['C', 'Bb', 'F#', 'Gb']) {
      for (const { symbol, mask, optional } of TYPES) {
        const read = readChordName(root + symbol);
        assert.ok(read.ok, root + symbol);
        const must = optional.reduce((set, tone) => set & ~(1 << tone.halfSteps), mask);
        assert.equal(writtenMask(read.value, 'must') & ~mask, 0, symbol);
        assert.equal(mask & ~writtenMask(read.value), 0, symbol);
        // A plain fifth, a ninth below an extension and the third of an eleventh are never asked for.
        assert.equal(must & ~writtenMask(read.value, 'must') & ~((1 << 7) | (1 << 2) | (1 << 4)), 0, symbol);
        if (writtenMask(read.value) !== mask) wider.push(root + symbol);
      }
    }
    assert.deepEqual(
      new Set(wider.map((name) => name.replace(/^[A-G][#b]?/, ''))),
      new Set(['13b9', '13#9', '13b5', 'mb6b9']),
    );
  });
});
