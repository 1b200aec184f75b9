import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { writtenMask } from '../../../../src/music/chord/writtenChord';
import { pitchClassOf } from '../../../../src/music/noteName';
import { sheetOf } from './ask';

/** T6 [S guitarworld.com; computed]: open major tunings under a straight bar at frets 0, 5, 7 and 12; minor: i iv v. */
const T6: readonly (readonly [string, string])[] = [
  ['open G', 'G C D G'],
  ['open D', 'D G A D'],
  ['open E', 'E A B E'],
  ['open A', 'A D E A'],
  ['open C', 'C F G C'],
  ['open D minor', 'Dm Gm Am Dm'],
  ['open E minor', 'Em Am Bm Em'],
  ['open G minor', 'Gm Cm Dm Gm'],
  ['open A minor', 'Am Dm Em Am'],
  ['open C minor', 'Cm Fm Gm Cm'],
];

describe('The tuning sheet: straight barres', () => {
  for (const [name, chords] of T6)
    it(`${name}: ${chords} at frets 0, 5, 7 and 12 (T6)`, () => {
      const { frets } = sheetOf(`tuning: ${name}`).barres;
      assert.equal([0, 5, 7, 12].map((fret) => frets[fret]?.chord).join(' '), chords);
      assert.deepEqual(
        frets.flatMap(({ fret, main }) => (main ? [fret] : [])),
        [0, 5, 7, 12],
      );
    });

  it('degrees in words in a key, and whether the chord belongs to it', () => {
    const { frets, words } = sheetOf('tuning: open G\nkey: G').barres;
    const told = [0, 2, 5, 7, 10].map((fret) => [frets[fret]?.words, frets[fret]?.inKey]);
    assert.deepEqual(told, [
      ['Open: G, the one chord', true],
      ['Fret 2: A, the two chord', false],
      ['Fret 5: C, the four chord', true],
      ['Fret 7: D, the five chord', true],
      ['Fret 10: F, the flat seven chord', false],
    ]);
    assert.equal(words, 'Degrees are counted in G major');
  });

  it('without a key they are counted from the open chord', () => {
    const { frets } = sheetOf('tuning: open D').barres;
    assert.equal(frets[5]?.degree, 'a fourth above the open chord');
    assert.equal(frets[7]?.degree, 'a fifth above the open chord');
    assert.equal(frets[12]?.degree, 'an octave above the open chord');
  });

  it('under a full capo they are named as played and as they sound', () => {
    const at5 = sheetOf('tuning: open D\ncapo: 2').barres.frets[5];
    assert.deepEqual([at5?.chord, at5?.sounds], ['G', 'A']);
  });

  it('a partial capo lets no bar lie below it; a banjo’s fifth string rings on', () => {
    const partial = sheetOf('capo: 3 on 5 4 3').barres;
    assert.deepEqual(
      partial.frets.map(({ fret }) => fret),
      [0, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    );
    assert.match(partial.remark, /partial capo at fret 3/);
    const banjo = sheetOf('instrument: banjo').barres;
    assert.deepEqual(banjo.strings, [4, 3, 2, 1]);
    assert.match(banjo.remark, /String 5, G4, is shorter and rings on/);
  });
});

describe('The tuning sheet: places of a slide player’s bar', () => {
  const lap = 'instrument: lap steel\ntuning: open G';

  it('are there for a lap steel and where the header says slide, not for fingers', () => {
    assert.ok(sheetOf(lap).slide);
    assert.ok(sheetOf('tuning: open D\nfretting: slide').slide);
    assert.ok(sheetOf('tuning: open D', { slide: true }).slide);
    assert.equal(sheetOf('tuning: open D').slide, null);
  });

  it('open G: the three main chords lie complete at frets 0, 5 and 7, with 12 (T6)', () => {
    const { chords } = sheetOf(`${lap}\nkey: G`).slide ?? { chords: [] };
    const straight = chords.map(({ chord, places }) => [
      chord,
      [
        ...new Set(
          places.flatMap((place) => (place.slant === 0 && place.leavesOut.length === 0 ? [place.fret] : [])),
        ),
      ],
    ]);
    assert.deepEqual(straight, [
      ['G', [0, 12]],
      ['C', [5]],
      ['D', [7]],
    ]);
    assert.equal(chords[1]?.words, 'C is complete under a straight bar at fret 5');
  });

  it('C6 gives C and its relative minor under one bar [lap-steel.com], A minor on strings 5 to 2', () => {
    const [minor] = sheetOf('instrument: lap steel', { chord: 'Am' }).slide?.chords ?? [];
    const place = minor?.places.find(({ fret, slant }) => fret === 0 && slant === 0);
    assert.deepEqual(place?.leavesOut, []);
    assert.ok(place.strings.every(({ note }) => ['A', 'C', 'E'].includes(note.charAt(0))));
  });

  it('a tempered major third is 13.7 cents wider than a just one, a minor one 15.6 narrower (§2.7)', () => {
    const [chord] = sheetOf(`${lap}\nkey: G`).slide?.chords ?? [];
    const thirds = chord?.places[0]?.thirds ?? [];
    assert.deepEqual(thirds, [
      { low: 6, high: 5, kind: 'major', cents: 13.7 },
      { low: 5, high: 4, kind: 'minor', cents: -15.6 },
    ]);
  });

  it('a third that is tuned flat by that much is just', () => {
    const [chord] = sheetOf('tuning: E2 B2 E3 G#3-13.7c B3 E4\nfretting: slide').slide?.chords ?? [];
    const thirds = chord?.places.flatMap((place) => place.thirds) ?? [];
    assert.ok(thirds.length > 0 && thirds.some(({ kind, cents }) => kind === 'major' && cents === 0));
  });

  it('without a key and without a chord of the open strings it says what to write', () => {
    const { slide } = sheetOf('tuning: C2 C#2 D2 D#2 E2 F2\nfretting: slide');
    assert.deepEqual(slide?.chords, []);
    assert.match(slide.words, /write a key/);
  });

  it('laws: nothing but tones of the chord sounds, what is left out is what is missing, slants are straight lines', () => {
    const chords = ['G', 'Am', 'D7', 'Csus4', 'E5', 'Fmaj7', 'Bm7b5'] as const;
    const tunings = ['open G', 'open A', 'C6', 'A6', 'E7', 'B11', 'open D'] as const;
    let seen = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...chords),
        fc.constantFrom(...tunings),
        fc.integer({ min: 0, max: 4 }),
        (chord, tuning, capo) => {
          const text = `instrument: lap steel\ntuning: ${tuning}${capo > 0 ? `\ncapo: ${capo}` : ''}`;
          const sheet = sheetOf(text, { chord });
          const read = readChordName(chord);
          assert.ok(read.ok && read.value.root);
          const root = pitchClassOf(read.value.root);
          const all = writtenMask(read.value);
          const opens = new Map(
            sheet.strings.map(({ number, pitches }) => [number, pitches[0]?.midi ?? NaN]),
          );
          for (const { fret, slant, strings, leavesOut } of sheet.slide?.chords[0]?.places ?? []) {
            seen++;
            let heard = 0;
            strings.forEach((one, at) => {
              assert.equal(one.fret, fret + slant * at);
              assert.equal(one.number, (strings[0]?.number ?? 0) - at);
              // Named as played: the capo moves names and strings alike.
              const tone = ((opens.get(one.number) ?? NaN) + one.fret - root + 120) % 12;
              heard |= 1 << tone;
            });
            assert.equal(heard & ~all, 0, 'a foreign tone');
            const missing = all & ~heard;
            assert.equal(
              leavesOut.length,
              Array.from(missing.toString(2)).filter((bit) => bit === '1').length,
            );
            assert.ok(strings.length >= 2 && strings.length <= (slant === 0 ? 4 : 3));
          }
        },
      ),
    );
    assert.ok(seen > 500, String(seen));
  });

  it('finds every straight place that a plain search over all groups finds', () => {
    // An oracle of its own: every run of 2 to 4 strings, every fret, all tones of the triad and no others.
    for (const tuning of ['open G', 'C6', 'E7']) {
      const sheet = sheetOf(`instrument: lap steel\ntuning: ${tuning}`, { chord: 'C' });
      const midis = sheet.strings.map(({ pitches }) => pitches[0]?.midi ?? NaN);
      const expected: string[] = [];
      for (let fret = 0; fret <= 12; fret++)
        for (let count = 3; count <= 4; count++)
          for (let first = 0; first + count <= midis.length; first++) {
            const classes = midis.slice(first, first + count).map((midi) => (midi + fret) % 12);
            if (classes.every((one) => [0, 4, 7].includes(one)) && new Set(classes).size === 3)
              expected.push(`${fret}: ${midis.length - first} and ${count}`);
          }
      const told = (sheet.slide?.chords[0]?.places ?? []).flatMap(({ fret, slant, strings, leavesOut }) =>
        slant === 0 && leavesOut.length === 0
          ? [`${fret}: ${strings[0]?.number ?? 0} and ${strings.length}`]
          : [],
      );
      // A group of three within one of four is told with it.
      const within = (group: string): boolean => {
        const [fret, first, count] = (/(\d+): (\d+) and (\d)/.exec(group) ?? []).slice(1).map(Number);
        return (
          count === 3 &&
          [first, (first ?? 0) + 1].some((one) => expected.includes(`${fret ?? ''}: ${one ?? ''} and 4`))
        );
      };
      assert.deepEqual([...told].sort(), expected.filter((group) => !within(group)).sort(), tuning);
    }
  });
});
