import assert from 'node:assert/strict';
import fc from 'fast-check';
import { ChordType, Note } from 'tonal';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { formatChord, writtenMask } from '../../../../src/music/chord/writtenChord';
import { formatPitchName } from '../../../../src/music/noteName';

/** `Bb: 3 5? b7 /F`: root, tones and bass of what was read. */
function told(text: string): string {
  const read = readChordName(text);
  if (!read.ok) return `error at ${read.error.start}–${read.error.end}`;
  const { root, bass, tones } = read.value;
  if (!root) return 'no chord';
  const list = tones.map(({ degree, need }) => degree.text + (need === 'may' ? '?' : '')).join(' ');
  return `${formatPitchName(root)}: ${list}${bass ? ` /${formatPitchName(bass)}` : ''}`;
}

describe('Reading chord names (what symbols mean: common practice, no source)', () => {
  for (const [texts, expected] of [
    ['C|CM|Cmaj|CMaj|Cmajor|C major|Cma', 'C: 3 5?'],
    ['Cm|C-|Cmin|Cmi|Cminor|CMin|C minor', 'C: b3 5?'],
    ['Cmaj7|CM7|CMa7|CΔ|CΔ7|C^7|C(maj7)|C7M', 'C: 3 5? 7'],
    ['C7', 'C: 3 5? b7'],
    ['Cm7|C-7|Cmin7|Cmi7', 'C: b3 5? b7'],
    ['Cm(maj7)|CmM7|Cm/maj7|C-Δ|Cminmaj7|CmMaj7', 'C: b3 5? 7'],
    ['Cm7b5|Cø|Cø7|Ch7|C-7b5|Cm7(b5)|Cm7-5|Cm7♭5', 'C: b3 b5 b7'],
    ['Cdim|C°|Cº|Co', 'C: b3 b5'],
    ['Cdim7|C°7|Co7', 'C: b3 b5 bb7'],
    ['Caug|C+|C#5|C(#5)', 'C#: 5|C: 3 #5'],
    ['C7#5|C+7|Caug7|C7+|C7+5|C7(#5)', 'C: 3 #5 b7'],
    ['Csus4|Csus|Csus 4', 'C: 4 5?'],
    ['Csus2', 'C: 2 5?'],
    ['Csus24|Csus2sus4|Csus4sus2', 'C: 2 4 5?'],
    ['C7sus4|C7sus|Csus7', 'C: 4 5? b7'],
    ['C9sus4|C9sus', 'C: 4 5? b7 9'],
    ['Cadd9|C2|Cadd2|C(add9)', 'C: 3 5? 9'],
    ['Cadd11|C4|Cadd4', 'C: 3 5? 11'],
    ['Cm(add9)|Cmadd9', 'C: b3 5? 9'],
    ['C6', 'C: 3 5? 6'],
    ['C6/9|C69|C6 9|C6(add9)', 'C: 3 5? 6 9'],
    ['Cm7/9|Cm9', 'C: b3 5? b7 9'],
    ['C9', 'C: 3 5? b7 9'],
    ['C11', 'C: 3? 5? b7 9? 11'],
    ['C13', 'C: 3 5? b7 9? 11? 13'],
    ['C13#11|C13(#11)', 'C: 3 5? b7 9? #11 13'],
    ['C7b9|C7-9|C7(b9)', 'C: 3 5? b7 b9'],
    ['C7#9|C7+9|C7(#9)', 'C: 3 5? b7 #9'],
    ['C7#9b13|C7(#9,b13)', 'C: 3 5? b7 #9 b13'],
    ['C7alt|C7 alt', 'C: 3 b5? #5? b7 b9? #9?'],
    ['Cmaj7#11|Cmaj#11', 'C: 3 5? 7 #11'],
    ['C5', 'C: 5'],
    ['C7(no3)|C7omit3|C7no3|C7no3rd', 'C: 5? b7'],
    ['C(no5)', 'C: 3'],
    ['C(b5)', 'C: 3 b5'],
    ['Am7/G|Am7\\G|Am7 / G', 'A: b3 5? b7 /G'],
    ['D/F#|D/F♯', 'D: 3 5? /F#'],
    ['Bb5|B♭5', 'Bb: 5'],
    ['Bbb5', 'Bb: 3 b5'],
    ['F#m|F♯m', 'F#: b3 5?'],
    ['N.C.|NC|n.c.|N. C.|no chord|tacet', 'no chord'],
    ['Dfoo', 'error at 1–4'],
    ['  Dfoo', 'error at 3–6'],
    ['dm', 'error at 0–1'],
    ['H7', 'error at 0–1'],
    ['D/H', 'error at 1–3'],
    ['C/g', 'error at 1–3'],
    ['Cmm', 'error at 2–3'],
    ['Cm5', 'error at 2–3'],
    ['C+9', 'error at 1–3'],
    ['', 'error at 0–0'],
  ] as const) {
    it(texts, () => {
      const allowed = expected.split('|');
      for (const text of texts.split('|')) {
        const got = told(text).replace(' b13?', '');
        assert.ok(allowed.includes(got), `${text}: ${got}`);
      }
    });
  }

  it('says what was expected, and offers what would do', () => {
    const error = (text: string) => {
      const read = readChordName(text);
      assert.ok(!read.ok);
      return read.error;
    };
    assert.match(error('H7').message, /H is B here/);
    assert.deepEqual(error('H7').suggestions, ['B7']);
    assert.deepEqual(error('dm').suggestions, ['Dm']);
    assert.match(error('Dfoo').message, /"foo" in Dfoo cannot be read, from character 2/);
    assert.deepEqual(error('C+9').suggestions, ['Cadd9', 'C9#5']);
    assert.match(error('D/H').message, /no bass/);
  });

  it('reads what tonal 6.4.3 calls its chord types to the same tones', () => {
    // tonal keeps a perfect fifth beside b5, gives 4 and b9sus other tones, and has names of no trade use.
    const otherwise =
      '^#5 ^ dom M6b5 6b5 7b5b13 4 quartal 7b5#9 7#9b5 M7add13 9b5b13 m11A b9sus phryg 7b5b9 7b9b5 7b5b9b13';
    const missed: string[] = [];
    let count = 0;
    for (const { aliases, intervals } of ChordType.all()) {
      const theirs = intervals.reduce((mask, interval) => {
        const midi = Note.midi(Note.transpose('C4', interval));
        return midi === null ? mask : mask | (1 << (midi % 12));
      }, 0);
      for (const alias of aliases) {
        count++;
        const read = readChordName(`C${alias}`);
        const agrees =
          read.ok &&
          (writtenMask(read.value, 'must') & ~theirs) === 0 &&
          (theirs & ~writtenMask(read.value)) === 0;
        if (!agrees) missed.push(alias);
      }
    }
    console.log(`      tonal aliases: ${count - missed.length} of ${count}`);
    assert.deepEqual(missed.sort(), otherwise.split(' ').sort());
  });

  it('never throws, and puts its errors inside the text', () => {
    const signs = fc.constantFrom(
      ...'ABCDEFGHabm#b♭♯-+/\\()0123456789 ',
      'maj',
      'min',
      'sus',
      'add',
      'dim',
      'no',
      '°',
      'Δ',
      '😀',
    );
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 10 }), (parts) => {
        const text = parts.join('');
        const read = readChordName(text);
        if (read.ok) return;
        assert.ok(
          read.error.start >= 0 && read.error.start <= read.error.end && read.error.end <= text.length,
        );
        assert.ok(read.error.message.endsWith('.'));
      }),
      { numRuns: 5000 },
    );
  });
});

describe('Writing chord names in plain symbols', () => {
  for (const [text, expected] of [
    ['CM7', 'Cmaj7'],
    ['C-7/Bb', 'Cm7/Bb'],
    ['Cø', 'Cm7b5'],
    ['B♭Δ', 'Bbmaj7'],
    ['C69', 'C6/9'],
    ['C2', 'Cadd9'],
    ['CmM7', 'Cm(maj7)'],
    ['C5/D', 'C5/D'],
    ['NC', 'N.C.'],
    ['C7alt', 'C7alt'],
  ] as const) {
    it(`${text} → ${expected}`, () => {
      const read = readChordName(text);
      assert.ok(read.ok);
      assert.equal(formatChord(read.value), expected);
    });
  }
});
