import assert from 'node:assert/strict';
import { toNumber } from '../../../../src/music/fraction';
import { Document } from '../../../../src/notation/document';
import { change, tab, toTuning } from './examples';

/* Whole texts as a player finds them, written out by hand (common practice, no source) where nothing else is named.
   Which string and fret the hand prefers is not held here, only in passages that leave no choice. */

const SCALE = `
title: Scale
tuning: standard

E4|------------------------|
B3|------------------0--1--|
G3|------------0--2--------|
D3|---0--2--3--------------|
A2|3-----------------------|
E2|------------------------|
`;

/** What the scale sounds: a C major scale in the first position (check-values.md T2). */
const SOUNDS = [48, 50, 52, 53, 55, 57, 59, 60];

describe('a passage converted', () => {
  for (const [tuning, labels] of [
    ['DADGAD', 'D4 A3 G3 D3 A2 D2'],
    ['open G', 'D4 B3 G3 D3 G2 D2'],
  ] as const) {
    it(`the C major scale of the first position keeps its notes in ${tuning} (check-values.md T2)`, () => {
      const { text, report } = change(SCALE, toTuning(tuning));
      const lines = text.trimEnd().split('\n');
      assert.deepEqual(lines.slice(0, 3), ['title: Scale', `tuning: ${tuning}`, '']);
      assert.equal(
        lines
          .slice(3)
          .map((line) => line.split('|')[0])
          .join(' '),
        labels,
      );
      assert.ok(lines.slice(3).every((line) => line.length === SCALE.split('\n')[4]?.length));
      const [system] = new Document(text).systems;
      assert.ok(system);
      assert.deepEqual(
        system.reading.notes.map(({ pitches }) => pitches[0]?.midi),
        SOUNDS,
      );
      assert.deepEqual(
        system.reading.notes.map(({ onset }) => toNumber(onset)),
        SOUNDS.map((_, i) => i / 2),
      );
      assert.deepEqual([report.notesIn, report.kept, report.moved, report.unplaced], [8, 8, 0, []]);
      assert.equal(report.remarks[0], `All 8 notes keep their pitch in ${tuning}.`);
    });
  }

  it('the same scale in DADGAD takes the strings and frets of check-values.md T3', () => {
    const [system] = new Document(change(SCALE, toTuning('DADGAD')).text).systems;
    assert.deepEqual(
      system?.reading.notes.map(({ string, fret }) => `${string}:${fret ?? 'x'}`),
      ['5:3', '4:0', '4:2', '4:3', '3:0', '2:0', '2:2', '2:3'],
    );
  });

  it('bars two and three of four become a system of their own, the old tuning stated again behind them', () => {
    const { text, report } = change(
      `
title:  Low Water
tuning: standard
key:    C

[Verse]
chords |C       |F       |G7      |C       |
words  |Low     |water   |at  the |slip    |
count  |1 2 3 4 |1 2 3 4 |1 2 3 4 |1 2 3 4 |
E4     |0---0---|--‹1-1---|1---1---|›0-------|
B3     |--1---1-|1---1---|--0---0-|1-------|
# as it comes
G3     |--0---0-|--2---2-|0---0---|0-------|
D3     |2---2---|3-------|--0-----|2-------|
A2     |3-------|--------|--2-----|3-------| ring
E2     |--------|1-------|3-------|--------|
Boats go out.

E4     |0-------|
B3     |1-------|
G3     |0-------|
D3     |2-------|
A2     |3-------|
E2     |--------|
`,
      toTuning('half step down', 'shapes'),
    );
    assert.equal(
      text,
      tab(`
title:  Low Water
tuning: standard
key:    C

[Verse]
chords |C       |
words  |Low     |
count  |1 2 3 4 |
E4     |0---0---|
B3     |--1---1-|
# as it comes
G3     |--0---0-|
D3     |2---2---|
A2     |3-------|
E2     |--------|

tuning: half step down
key:    B
chords |E       |F#7     |
words  |water   |at  the |
count  |1 2 3 4 |1 2 3 4 |
Eb4    |--1-1---|1---1---|
Bb3    |1---1---|--0---0-|
Gb3    |--2---2-|0---0---|
Db3    |3-------|--0-----|
Ab2    |--------|--2-----|
Eb2    |1-------|3-------|

tuning: standard
key:    C
chords |C       |
words  |slip    |
count  |1 2 3 4 |
E4     |0-------|
B3     |1-------|
G3     |0-------|
D3     |2-------|
A2     |3-------| ring
E2     |--------|
Boats go out.

E4     |0-------|
B3     |1-------|
G3     |0-------|
D3     |2-------|
A2     |3-------|
E2     |--------|
`),
    );
    assert.equal(report.notesIn, 17);
  });

  it('a riff on three strings in drop D comes to standard on no more strings than it needs, and back', () => {
    const riff = tab(`
tuning: drop D

D3|5-5-8-5---------|
A2|5-5-8-5-10--8---|
D2|5-5-8-5-10--8---|
`);
    const there = change(riff, toTuning('standard'));
    assert.equal(there.report.kept, 16);
    assert.match(there.text, /^tuning: standard\n\n/);
    const strings = there.text.trimEnd().split('\n').slice(2);
    assert.ok(strings.length < 6);
    assert.ok(
      [strings[0], strings.at(-1)].every((line) => line !== undefined && /\d.*\|.*\d.*\|$/.test(line)),
    );
    const back = change(there.text, toTuning('drop D'));
    assert.equal(back.report.kept, 16);
    const sounds = (text: string): (string | undefined)[] =>
      new Document(text).systems.flatMap(({ reading }) =>
        reading.notes.map(({ onset, pitches }) => `${onset.n}/${onset.d} ${pitches[0]?.midi}`),
      );
    assert.deepEqual(sounds(back.text).sort(), sounds(riff).sort());
  });

  it('a file without fields gets one before its first system', () => {
    const system = ['E4|0---|', 'B3|----|', 'G3|----|', 'D3|----|', 'A2|----|', 'E2|----|'];
    assert.equal(
      change(system.join('\n'), toTuning('DADGAD')).text.trimEnd(),
      ['tuning: DADGAD', 'D4|2---|', 'A3|----|', 'G3|----|', 'D3|----|', 'A2|----|', 'D2|----|'].join('\n'),
    );
  });

  it('a new field stands last among the fields and in line with them', () => {
    const { text } = change(
      `
title:  Low Water
meter:  3/4

E4|0-----|
B3|------|
G3|------|
D3|------|
A2|------|
E2|------|
`,
      toTuning('DADGAD'),
    );
    assert.match(text, /^title: {2}Low Water\nmeter: {2}3\/4\ntuning: DADGAD\n\nD4\|2/);
  });

  it('what stands in the tuning already stays as it is, though it was fingered by choice', () => {
    const text = `
part: low
tuning: DADGAD

D4|----|
A3|----|
G3|----|
D3|7---|
A2|----|
D2|----|

part: high
tuning: standard

E4|5---|
B3|----|
G3|----|
D3|----|
A2|----|
E2|----|
`;
    const { text: after, report } = change(text, toTuning('DADGAD'));
    assert.equal(
      after,
      tab(text)
        .replace('tuning: standard', 'tuning: DADGAD')
        .replace('E4|5---|\nB3', 'D4|7---|\nA3')
        .replace(/E2(.*\n)$/, 'D2$1')
        .replace(/^(part: high[^]*)/m, (high) => high),
    );
    assert.ok(report.remarks.includes('What stands in DADGAD already stays as it is.'));
  });

  it('a note below the lowest string is left out and named with its bar and the reason', () => {
    const { text, report } = change(
      `
tuning: DADGAD

D4|--------|--------|
A3|--------|--------|
G3|--------|--------|
D3|--0---0-|--0---0-|
A2|--------|--------|
D2|2-------|0-------|
`,
      toTuning('standard'),
    );
    assert.match(
      text,
      /D3 +\|--0---0-\|--0---0-\|\nA2 +\|--------\|--------\|\nE2 +\|0-------\|--------\|\nomitted \| {9}D2\n$/,
    );
    assert.deepEqual(report.unplaced, [
      { bar: 2, name: 'D2', reason: 'it lies 2 half steps below the lowest open string' },
    ]);
    assert.deepEqual(report.remarks.slice(0, 2), [
      '5 of 6 notes keep their pitch in standard.',
      '1 note has no place and is left out.',
    ]);
    assert.ok(
      report.offers?.some(
        ({ title }) => title === 'Move the whole passage up 2 half steps; every note has a place',
      ),
    );
  });

  it('of several parts the report names the part', () => {
    const { report } = change(
      `
tuning: DADGAD
part: low

D2|0---|

part: high

D2|----|0---|
`,
      toTuning('standard'),
    );
    assert.deepEqual(
      report.unplaced.map(({ part, bar }) => `${part} ${bar}`),
      ['low 1', 'high 2'],
    );
  });

  it('a harmonic is found at another node of another string', () => {
    const { text } = change(
      `
tuning: standard

E4|--------|
B3|--------|
G3|--------|
D3|--------|
A2|<12>----|
E2|--------|
`,
      toTuning('B1 E2 A1 D3 G3 B3'),
    );
    // The fourth partial of A1, touched at the fifth fret, is the second partial of A2 (check-values.md T11).
    assert.match(text, /\nA1\|<5>-----\|\n/);
  });

  it('joined notes stay together on one string, and what bends and slides name moves with them', () => {
    const { text, report } = change(
      `
tuning: standard

E4|5h7---7p5---5/7-|7b9---7b9r7-5~--|
B3|----------------|----------------|
G3|----------------|----------------|
D3|----------------|----------------|
A2|----------------|----------------|
E2|----------------|----------------|
`,
      toTuning('standard down 2'),
    );
    assert.match(text, /\nD4 +\|7h9---9p7---7\/9-\|9b11-+9b11r9-7~-+\|\n/);
    assert.equal(report.kept, 9);
  });

  it('where wider numbers would change the times a count row says them', () => {
    const { text } = change(
      `
tuning: standard

E4|5h7---7p5---5/7-|7b9---7b9r7-5~--|
B3|----------------|----------------|
G3|----------------|----------------|
D3|----------------|----------------|
A2|----------------|----------------|
E2|----------------|----------------|
`,
      toTuning('standard down 2'),
    );
    assert.match(text, /\ncount \|1 & 2 & 3 & 4 & \|1 /);
  });

  it('two-digit frets make room where they can without one', () => {
    const { text } = change(
      `
tuning: standard

E4|8h9p8-----------|
B3|----------------|
G3|----------------|
D3|----------------|
A2|----------------|
E2|----------------|
`,
      toTuning('E2 A2 D3 G3 B3 D4'),
    );
    assert.match(text, /\nD4\|10h11p10-+\|\n/);
    assert.doesNotMatch(text, /count/);
  });

  it('repeat signs and endings stay, also where a line left its dots out', () => {
    const { text } = change(
      `
tuning: standard

ending|         |1.      |2.      |
E4    |--0---3--|0------:|1------||
B3    |:1---0---|1------:|1------||
G3    |:0---0---|0-------|2------||
D3    |--2------|2-------|3------||
A2    |--3---2--|3-------|3------||
E2    |------3--|--------|1------||
`,
      toTuning('drop D'),
    );
    assert.equal(
      text,
      tab(`
tuning: drop D

ending|         |1.      |2.      |
E4    |--0---3--|0------:|1------||
B3    |:1---0---|1------:|1------||
G3    |:0---0---|0-------|2------||
D3    |--2------|2-------|3------||
A2    |--3---2--|3-------|3------||
D2    |------5--|--------|3------||
`),
    );
  });

  it('a stop goes with the note that it ends', () => {
    const { text } = change(
      `
tuning: standard

E4|0-.-|
B3|----|
G3|----|
D3|----|
A2|----|
E2|----|
`,
      toTuning('E2 A2 D3 G3 E4 B4'),
    );
    assert.match(text, /\nB4\|----\|\nE4\|0-\.-\|\n/);
  });

  it('a fingers row is named when the frets under it went elsewhere', () => {
    const text = `
tuning: standard

fingers|1   3   |
E4     |1---3---|
B3     |--------|
G3     |--------|
D3     |--------|
A2     |--------|
E2     |--------|
`;
    const sentence = 'The fingers row still names the fingers of the old frets; see to it.';
    assert.ok(change(text, toTuning('DADGAD')).report.remarks.includes(sentence));
    assert.ok(!change(text, toTuning('open E')).report.remarks.includes(sentence));
  });

  it('raised strings come with the usual cautions', () => {
    const text = 'E4|0---|\nB3|----|\nG3|----|\nD3|----|\nA2|----|\nE2|----|\n';
    const caution = /luthier/;
    assert.ok(change(text, toTuning('open E')).report.remarks.some((remark) => caution.test(remark)));
    assert.ok(!change(text, toTuning('open D')).report.remarks.some((remark) => caution.test(remark)));
  });

  it('fewer and more strings: a five-string open G, seven strings', () => {
    assert.match(
      change(SCALE, toTuning('G2 D3 G3 B3 D4')).text,
      /\ntuning: G2 D3 G3 B3 D4\n\nD4\|-+\|\nB3\|-{18}0--1--\|\nG3\|.+\nD3\|.+\nG2\|5-+\|\n$/,
    );
    assert.match(change(SCALE, toTuning('B1 E2 A2 D3 G3 B3 E4')).text, /\nA2\|3-+\|\nE2\|-+\|\nB1\|-+\|\n$/);
  });

  it('a course keeps the label by which it was called', () => {
    const text = `
instrument: 12-string guitar

E4|0---|
B3|1---|
G3|0---|
D3|2---|
A2|3---|
E2|----|
`;
    assert.match(
      change(text, toTuning('DADGAD')).text,
      /\nD4\|.*\nA3\|.*\nG3\|.*\nD3\|.*\nA2\|.*\nD2\|.*\n$/,
    );
  });
});

describe('a passage converted with its shapes', () => {
  it('where all strings move alike, key and chords move with them', () => {
    const { text, report } = change(
      `
tuning: open E
key:    E

chords |E   A/C# |N.C. B7 |
E4     |0---5----|7-------|
B3     |0---5----|7-------|
G#3    |0---5----|7-------|
E3     |0---5----|7-------|
B2     |0---5----|7-------|
E2     |0--------|7-------|
`,
      toTuning('open D', 'shapes'),
    );
    assert.equal(
      text,
      tab(`
tuning: open D
key:    D

chords |D   G/B  |N.C. A7 |
D4     |0---5----|7-------|
A3     |0---5----|7-------|
F#3    |0---5----|7-------|
D3     |0---5----|7-------|
A2     |0---5----|7-------|
D2     |0--------|7-------|
`),
    );
    assert.deepEqual(report.remarks, [
      'Every string and fret stays; all 17 notes sound another pitch in open D.',
      'The key and the chord names move down 2 half steps with the strings.',
    ]);
  });

  it('where they do not, chords are named from what sounds and the key stays', () => {
    const { text, report } = change(
      `
tuning: standard
key:    E minor

chords |Em      |
E4     |0-------|
B3     |0-------|
G3     |0-------|
D3     |2-------|
A2     |2-------|
E2     |0-------|
`,
      toTuning('E2 A2 D3 G#3 B3 E4', 'shapes'),
    );
    assert.match(text, /\nkey: {4}E minor\n\nchords \|E {7}\|\n/);
    assert.equal(report.kept, 5);
    assert.equal(report.moved, 1);
    assert.match(report.remarks.join(' '), /the key is left as it is written/);
  });

  it('a string that is not there takes its notes with it, each named', () => {
    const { report } = change(
      `
E4|0---|
B3|----|
G3|----|
D3|----|
A2|2---|
E2|3---|
`,
      toTuning('G2 D3 G3 B3 D4', 'shapes'),
    );
    assert.deepEqual(report.unplaced, [{ bar: 1, name: 'G2', reason: 'there is no string 6' }]);
  });
});
