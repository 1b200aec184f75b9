import assert from 'node:assert/strict';
import { by, change, refused, tab, toCapo, toTuning } from './examples';

const CHORDS = `
key: Em
tuning: standard

chords |Em     D/F#  |N.C.   (riff) Cmaj7 |
E4     |0------2-----|0------3------0-----|
B3     |0------3-----|0------0------0-----|
G3     |0------2-----|0------0------0-----|
D3     |2------0-----|2-------------2-----|
A2     |2------------|--------------3-----|
E2     |0------2-----|--------------------|
`;

describe('a passage transposed', () => {
  it('key and chords move with it, slash chords too; what names no chord stays', () => {
    const { text, report } = change(CHORDS, by(3));
    assert.match(
      text,
      /^key: Gm\ntuning: standard\n\nchords \|Gm {5}F\/A {3}\|N\.C\. {3}\(riff\) Ebmaj7 *\|\n/,
    );
    assert.equal(report.moved, 23);
    assert.deepEqual(report.remarks, [
      'All 23 notes move up 3 half steps.',
      'The key goes from E minor to G minor.',
    ]);
  });

  it('to a key goes the nearest way, in the writer’s own way to write one', () => {
    const text = 'key: G\nE4|3---|\nB3|0---|\nG3|0---|\nD3|0---|\nA2|2---|\nE2|3---|\n';
    assert.match(change(text, by('A')).text, /^key: A\nE4\|5---\|/);
    assert.deepEqual(change(text, by('A')).text, change(text, by(2)).text);
    assert.deepEqual(change(text, by('F')).report.remarks[0], change(text, by(-2)).report.remarks[0]);
  });

  it('a passage in the middle has its key before it and the old one behind it, as each was written', () => {
    const system = (fret: number): string =>
      `E4|${fret}---|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|----|\n`;
    const { text } = change(`key: Am\n\n${system(0)}\n‹${system(0)}›\n${system(0)}`, by(2));
    assert.equal(text, `key: Am\n\n${system(0)}\nkey: Bm\n${system(2)}\nkey: Am\n${system(0)}`);
  });

  it('a fret that sounds no pitch is named by its string', () => {
    const { report } = change(
      'capo: 2 on 4 3\n\nE4|0---|\nB3|----|\nG3|1---|\nD3|----|\nA2|----|\nE2|----|\n',
      by(1),
    );
    assert.deepEqual(report.unplaced, [
      { bar: 1, name: 'fret 1 on string 3', reason: 'it has no pitch where it stands' },
    ]);
  });

  it('chords over words move, though no string stands under them', () => {
    const { text } = change(
      `
key: D

chords |D    G/B  |A7   |
words  |out  and  |home |

E4|2---|
B3|----|
G3|----|
D3|----|
A2|----|
E2|----|
`,
      by(2),
    );
    assert.match(text, /^key: E\n\nchords \|E {4}A\/C# \|B7 {3}\|\nwords {2}\|out {2}and {2}\|home \|\n/);
  });

  it('by nothing changes nothing', () => {
    const { text, report } = change(CHORDS, by(0));
    assert.equal(text, tab(CHORDS));
    assert.equal(report.kept, report.notesIn);
  });

  it('refuses what is no way to go, and says what is', () => {
    assert.match(refused(CHORDS, by(40)), /whole number of half steps from −36 to 36/);
    assert.match(refused(CHORDS, by(1.5)), /whole number/);
    assert.match(refused(CHORDS, by('up a bit')), /half steps, such as -3, or a key/);
    assert.match(refused(CHORDS, by('G major')), /keeps its mode, so give a key such as G minor/);
    assert.match(refused('E4|0-|\nB3|--|\nG3|--|\nD3|--|\nA2|--|\nE2|--|', by('D')), /no key to start from/);
  });
});

describe('a capo moved', () => {
  const SONG = `
title: Low Water
key:   A

chords |A       |E/G#    |
E4     |5-------|4-------|
B3     |5-------|5-------|
G3     |6-------|4-------|
D3     |7-------|6-------|
A2     |7-------|--------|
E2     |5-------|4-------|
`;

  it('with the sound kept, frets, key and chords are written as played', () => {
    const { text, report } = change(SONG, toCapo('2'));
    assert.equal(
      text,
      tab(`
title: Low Water
key:   G
capo:  2

chords |G       |D/F#    |
E4     |3-------|2-------|
B3     |3-------|3-------|
G3     |4-------|2-------|
D3     |5-------|4-------|
A2     |5-------|--------|
E2     |3-------|2-------|
`),
    );
    assert.deepEqual(report.remarks, [
      'All 11 notes keep their pitch with the capo at fret 2.',
      'Shapes of G major sound in A major, up 2 half steps.',
    ]);
    assert.equal(change(text, toCapo('none')).text, tab(SONG).replace(/(key: .*)/, '$1\ncapo:  none'));
  });

  it('with the shapes kept, nothing but the capo is written anew', () => {
    const { text, report } = change(SONG, toCapo('3', 'shapes'));
    assert.equal(text, tab(SONG).replace(/(key: .*)/, '$1\ncapo:  3'));
    assert.equal(report.moved, 11);
    assert.deepEqual(report.remarks, [
      'Every string and fret stays; all 11 notes sound another pitch with the capo at fret 3.',
      'Shapes of A major sound in C major, up 3 half steps.',
    ]);
  });

  it('in the middle of a song it is put on before the passage and taken off behind it', () => {
    const system = 'E4|5---|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|----|\n';
    assert.equal(
      change(`${system}\n‹${system}›\n${system}`, toCapo('2', 'shapes')).text,
      `${system}\ncapo: 2\n${system}\ncapo: none\n${system}`,
    );
  });

  it('a partial capo: covered strings keep counting from the nut', () => {
    const { text } = change(
      `
E4|0---|
B3|0---|
G3|2---|
D3|2---|
A2|2---|
E2|0---|
`,
      toCapo('2 on 5 4 3'),
    );
    // 0 at the capo sounds what 2 sounded at the nut (notation.md §8).
    assert.match(
      text,
      /^capo: 2 on 5 4 3\nE4\|0---\|\nB3\|0---\|\nG3\|0---\|\nD3\|0---\|\nA2\|0---\|\nE2\|0---\|\n$/,
    );
  });

  it('below the lowest note there is nothing: what is under the capo is named', () => {
    const { report } = change('E4|----|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|0---|\n', toCapo('2'));
    assert.deepEqual(report.unplaced, [
      { bar: 1, name: 'E2', reason: 'it lies 2 half steps below the lowest open string' },
    ]);
  });
});

describe('a change refused', () => {
  const SYSTEM = 'E4|0---|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|----|\n';

  it('where there is no tab', () => {
    for (const make of [toTuning('DADGAD'), by(2), toCapo('2')]) {
      assert.match(refused('Only words.\n', make), /no tab in the passage; put the cursor in a system/);
      assert.match(refused(`‹Only words.›\n\n${SYSTEM}`, make), /no tab in the passage/);
    }
  });

  it('for a tuning or a capo that cannot be read, with the reader’s own sentence', () => {
    assert.match(refused(SYSTEM, toTuning('open Q')), /open Q.*no tuning/);
    assert.match(refused(SYSTEM, toTuning('')), /\S.*\.$/);
    assert.match(refused(SYSTEM, toCapo('2 on 7')), /There is no string 7/);
    assert.match(refused(SYSTEM, toCapo('high')), /Write the fret of the capo/);
  });

  it('for a partial capo on a string that the new tuning does not have', () => {
    assert.match(
      refused(`capo: 2 on 6 5\n${SYSTEM}`, toTuning('G2 D3 G3 B3 D4')),
      /partial capo lies on string 6, which a tuning of 5 strings does not have; change capo first/,
    );
  });

  it('for a tuning that one of the instruments cannot read, named', () => {
    const ukulele = 'part: two\ninstrument: ukulele\n\nA4|0---|\nE4|----|\nC4|----|\nG4|----|\n';
    assert.match(
      refused(`part: one\n\n${SYSTEM}\n${ukulele}`, toTuning('high strung')),
      /^For the ukulele: /,
    );
  });
});
