import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import { Document } from '../../../src/notation/document';
import { CELL_CASES, LINE_CASES, SYSTEM_CASES, TUNING_CASES } from '../notation/cases.table';
import { expectTold, SETTINGS } from './marked';

describe('what is told, where and in which words', () => {
  it('signs', () => {
    expectTold(`
G|--5q--|--45--|--12.5-|-7r5--|--5/--7|
     ^ error unknown-sign: “q” is no sign of the notation. Write a dash, or put words behind the last bar line.
           ^^ error fret-past-neck: Fret 45 is past the neck, which has 22 frets. 4 and 5 with a dash between?
                    ^ warning dash-before-note: The dot stops the string and 5 follows at once, which reads like a decimal. Put a dash behind the dot.
                          ^ error release-without-bend: “r” releases a bend, and no note is bent before it on this string. Write the bend, such as 7b9r7, or p for a pull-off.
                                  ^ hint slide-to-nowhere: This slide touches only the note it leaves, so it goes to nowhere and the next note is struck. Write it up to the next note to join the two.
`);
  });

  it('what contradicts itself', () => {
    expectTold(`
G|--7h5-|--5p7-|--7/5-|--0b2-|--7b5-|
    ^^^ warning hammer-on-not-rising: A hammer-on rises, and this one goes from fret 7 to 5. Write p for a pull-off.
           ^^^ warning pull-off-not-falling: A pull-off falls, and this one goes from fret 5 to 7. Write h for a hammer-on.
                  ^^^ warning slide-against-sign: “/” slides up, and this slide goes from fret 7 to 5. Write \\.
                         ^^^ warning bend-open-string: An open string cannot be bent: no finger stops it. Bend the same note on another string, or leave the bend out.
                                ^^^ warning bend-not-rising: A bend raises the pitch, and this one goes from fret 7 to 5. Write the fret whose pitch it reaches, or b alone for a whole step.
`);
  });

  it('fields', () => {
    expectTold(`
tunning: DADGAD
^^^^^^^ warning field-misspelled: “tunning” is no field, so this line is only text. Is tuning meant?
scale: D major
^^^^^ hint scale-for-key: There is no field scale, so this line is only text. Write key for what the piece is in.
capo:
^^^^ warning empty-field: The field capo needs a value behind its colon. Write it, or take the line out.
key: D happy
^^^^^^^^^^^^ warning repeated-field: The field key is written twice here; the last one holds. Take this one out.
key: H
     ^ error key-value: H is B here: write B for the note a half step below C, Bb below that.
`);
  });

  it('labels, once for a system where they are the usual ones', () => {
    expectTold(`
tuning: half step down

E|0---|
^ hint usual-labels: The labels are those of the usual tuning, and the strings are Eb Ab Db Gb Bb Eb here, low string first. Relabel the lines.
B|----|
G|----|
D|----|
A|----|
E|----|
`);
  });

  it('labels, line by line where they disagree', () => {
    expectTold(`
tuning: DADGAD

D|0---|
B|----|
^ warning label-disagrees: This line is string 2, which the tuning has at A, and its label says B. Relabel it, or change the tuning.
G|----|
D|----|
A|----|
E|----|
^ warning label-disagrees: This line is string 6, which the tuning has at D, and its label says E. Relabel it, or change the tuning.
`);
  });

  it('a wide stretch, in millimetres of the neck that is declared', () => {
    // 648 · (2^(−1/12) − 2^(−6/12)) = 153.4: equal temperament, x = L(1 − 2^(−f/12)).
    expectTold(`
E|6---|
  ^ warning stretch-over-reach: Frets 1 and 6, stopped at one time, lie 153 mm apart; your reach is set to 130 mm. Play one of them on another string, or leave one out.
B|----|
G|----|
D|----|
A|1---|
E|----|
`);
    expectTold(
      `
scale length: 381 mm

E|8---|
  ^ warning stretch-over-reach: Frets 1 and 8, stopped at one time, lie 120 mm apart; your reach is set to 110 mm. Play one of them on another string, or leave one out.
B|----|
G|----|
D|----|
A|1---|
E|----|
`.trimStart(),
      { reach: 110, severities: { 'string-slack': 'off' } },
    );
  });

  it('chords under a full capo, by the names as played', () => {
    expectTold(`
capo: 2

chords |F       |D       |E       |
        ^ warning chord-disagrees: F is written, D and F# sound: D (names as played with the capo at fret 2).
E      |2-------|2-------|2-------|
B      |3-------|3-------|3-------|
G      |2-------|2-------|2-------|
D      |0-------|0-------|0-------|
A      |--------|--------|--------|
E      |--------|--------|--------|
`);
  });

  it('what rings on over a new chord, unless a dot stops it', () => {
    expectTold(`
chords |C       |Dm      |
                 ^^ information chord-adds: Dm also has C sounding: Dm/C.
E      |0-------|1-------|
B      |1-------|3-------|
G      |0-------|2-------|
D      |2-------|0-------|
A      |3-------|--------|
E      |--------|--------|
`);
    assert.deepEqual(
      checkDocument(
        new Document(
          'chords |C       |Dm      |\nE      |0-------|1-------|\nB      |1-------|3-------|\nG      |0-------|2-------|\nD      |2-------|0-------|\nA      |3-------|.-------|\nE      |--------|--------|\n',
        ),
        SETTINGS,
      ),
      [],
    );
  });

  it('tab of other habits', () => {
    expectTold(`
E│––0––│
 ^^^ warning look-alikes: │ and – look like - or | and are read so. Write the plain signs.
B|--1-- 3--|
       ^ warning space-in-bar: A space ends the bars of a string line, so what follows is not played. Write dashes for the spaces.
G|--0--|
D|--2--|
A|--3--|
E|-----|

H|--0--|
^^^^^^^^ warning string-line-misspelled: This looks like the bars of a string but is not played: a label, the string’s note or number, and | come first, such as E|.
`);
  });
});

describe('the marks of these tests', () => {
  it('throw where there are none', () => assert.throws(() => expectTold('G|--5--|\n'), /no mark/));
  it('throw without a message', () =>
    assert.throws(() => expectTold('G|--5q-|\n     ^\n'), /without a message/));
  it('fail where something else is told', () => {
    assert.throws(() => expectTold('G|--5q-|\n    ^ error unknown-sign: “q” is no sign.\n'), /deep-equal/);
  });
});

describe('the sixty readings, as far as something is told', () => {
  const told = (text: string): string[] =>
    checkDocument(new Document(text), SETTINGS).map(({ severity, code }) => `${severity} ${code}`);

  const nearMissCodes = {
    field: 'field-misspelled',
    scale: 'scale-for-key',
    'string-line': 'string-line-misspelled',
  };
  for (const { n, text, nearMiss, nearRow, lookAlikes, junk } of LINE_CASES) {
    const expected =
      nearMiss !== undefined && nearMiss !== 'silent'
        ? nearMissCodes[nearMiss.kind]
        : nearRow !== undefined
          ? 'row-misspelled'
          : lookAlikes
            ? 'look-alikes'
            : junk
              ? 'unknown-sign'
              : undefined;
    if (expected === undefined && nearMiss !== 'silent') continue;
    it(`${n}: ${text}`, () => {
      const codes = checkDocument(new Document(`${text}\n`), SETTINGS).map(({ code }) => code);
      // One line of string E may be string 6 or 1, and is told for that too.
      const others = codes.filter((code) => code !== 'strings-left-out');
      assert.deepEqual(others, expected === undefined ? [] : [expected]);
    });
  }

  for (const tuning of TUNING_CASES) {
    if (!('error' in tuning)) continue;
    it(`${tuning.n}: tuning ${tuning.value}`, () => {
      const found = checkDocument(new Document(`tuning: ${tuning.value}\n`), SETTINGS);
      assert.deepEqual(
        found.map(({ severity, code }) => `${severity} ${code}`),
        ['error tuning-value'],
      );
      if (tuning.offers !== undefined) {
        const titles = found.flatMap(({ mends }) => mends.map(({ title }) => title));
        assert.ok(titles.includes(`Write ${tuning.offers}`), titles.join());
      }
    });
  }

  for (const { n, text, problem } of CELL_CASES) {
    it(`${n}: ${text}`, () => {
      const found = checkDocument(new Document(`${text}\n`), SETTINGS);
      if (!problem) {
        assert.deepEqual(found, []);
        return;
      }
      const [first, second] = found;
      assert.ok(first && !second, JSON.stringify(found));
      if (problem.severity !== 'any') assert.equal(first.severity, problem.severity);
      const body = text.indexOf('|');
      const [from, to] = problem.columns;
      assert.ok(first.range.start.character >= body + from && first.range.end.character <= body + to + 1);
      if (problem.split) {
        const write = `Write ${problem.split.join('-')}`;
        assert.ok(first.mends.some(({ title }) => title === write));
      }
    });
  }

  for (const { n, text, told: count } of SYSTEM_CASES) {
    if (count === undefined) continue;
    it(`${n}: ${count} told in ${JSON.stringify(text)}`, () => {
      assert.equal(told(text).length, count, told(text).join());
    });
  }

  it('49: one hint for the usual labels', () => {
    const [system] = SYSTEM_CASES.filter(({ n }) => n === 49);
    assert.deepEqual(told(system?.text ?? ''), ['hint usual-labels']);
  });
});
