import assert from 'node:assert/strict';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { fill, LEDGER, opened, service } from './song';

/** The lines of a text from the first that begins with a word. */
function linesFrom(text: string, start: string): string[] {
  const lines = text.split('\n');
  return lines.slice(lines.findIndex((line) => line.startsWith(start)));
}

describe('filling a song with shapes', () => {
  it('writes string lines under each row, in its own columns, and leaves all else', () => {
    const { text, edits, report } = fill(LEDGER);
    assert.equal(edits, 1);
    const kept = text.split('\n').filter((line) => !/^[A-G]\d /.test(line));
    assert.equal(kept.join('\n'), LEDGER);
    const strings = text.split('\n').filter((line) => /^[A-G]\d /.test(line));
    assert.equal(strings.length, 12);
    // Facts of the trade (straight barres, check values T6): the open strings of open G are G, fret 5 is C.
    assert.match(strings[5] ?? '', /^D2 {5}\|[0-]/);
    for (const line of strings.slice(0, 5)) assert.match(line, /^[A-G]\d {5}\|0-/, line);
    assert.match(report.remarks[0] ?? '', /^All 6 chords have their shapes/);
  });

  it('is done once: what is filled stays', () => {
    const once = fill(LEDGER);
    const twice = fill(once.text);
    assert.equal(twice.edits, 0);
    assert.deepEqual(twice.report.remarks, ['Nothing is changed: every system here has tab already.']);
  });

  it('leaves tab alone and says so', () => {
    const text = 'chords |G       |\nE4     |3-------|\n\nchords |C       |\n';
    const { text: after, report } = fill(text);
    assert.ok(after.startsWith('chords |G       |\nE4     |3-------|\n\nchords |C       |\nE4     |'));
    assert.ok(
      report.remarks.includes('1 system has tab already and stays as it is.'),
      report.remarks.join('\n'),
    );
  });

  it('fills strings on which nothing stands yet, with their labels and bar signs', () => {
    const empty = ['E', 'B', 'G', 'D', 'A', 'E'].map((label) => `${label}      |:--------|--------:|`);
    const { text } = fill(`chords | C       |G       |\n${empty.join('\n')}\n`);
    const [row, ...strings] = text.trimEnd().split('\n');
    assert.equal(row, 'chords | C       |G       |');
    assert.equal(strings.length, 6);
    // The everyday C and G of standard tuning: x32010 and 320003 or 320033 (common practice; chords-db has them first).
    assert.deepEqual(
      strings.slice(0, 6).map((line) => line.slice(7, 10)),
      ['|:0', '|:1', '|:0', '|:2', '|:3', '|:-'],
    );
  });

  it('keeps silence: a dot ends what rings where N.C. stands', () => {
    const { text } = fill('chords |C       N.C.    |\n');
    const strings = linesFrom(text, 'E4').filter((line) => line !== '');
    assert.deepEqual(
      strings.map((line) => line.slice(7)),
      [
        '|0-------.-------|',
        '|1-------.-------|',
        '|0-------.-------|',
        '|2-------.-------|',
        '|3-------.-------|',
        '|----------------|',
      ],
    );
  });

  it('ends a string that would blur the next chord, and no other', () => {
    // G in standard has its bass on string 6, C and D do not; G belongs to C but lies below its bass.
    const { text, report } = fill('chords |G       C       |\n');
    const low = text.split('\n').find((line) => line.startsWith('E2'));
    assert.equal(low, 'E2     |3-------.-------|');
    assert.ok(report.remarks.some((remark) => remark.startsWith('A dot stops')));
  });

  it('strikes on every beat, in 6/8 on dotted ones', () => {
    const beats = (text: string): readonly string[] =>
      (opened(fill(text, { strum: 'beats' }).text).systems[0]?.reading.notes ?? [])
        .filter(({ string }) => string === 2)
        .map(({ onset }) => `${onset.n}/${onset.d}`);
    assert.deepEqual(beats('chords |C       G       |\n'), ['0/1', '1/1', '2/1', '3/1']);
    assert.deepEqual(beats('meter: 6/8\n\nchords |C           |\n'), ['0/1', '3/2']);
    // The chord before holds on over the bar sign, and into the next system of the section.
    assert.deepEqual(beats('chords |C       |        |\n').length, 8);
    const { text } = fill('chords |C       |\n\nchords |    G   |\n', { strum: 'beats' });
    const second = opened(text).systems[1]?.reading.notes.filter(({ string }) => string === 2);
    assert.deepEqual(
      second?.map(({ fret }) => fret),
      [1, 1, 0, 0],
    );
  });

  it('makes room where a bar is too narrow for its beats', () => {
    const { text } = fill('chords |C |G |\n', { strum: 'beats' });
    const [system] = opened(text).systems;
    const strums = system?.reading.notes
      .filter(({ string }) => string === 2)
      .map(({ onset }) => onset.n / onset.d);
    assert.deepEqual(strums, [0, 1, 2, 3, 4, 5, 6, 7]);
    assert.match(text, /^chords \|C +\|G +\|\n/);
  });

  it('puts chords on beats where columns give no time, under a count, and says so', () => {
    const { text, report } = fill('chords |G      D   C |\n');
    const chords = opened(text).systems[0]?.reading.rows.find(({ row }) => row === 'chords');
    assert.deepEqual(
      chords?.marks.map(({ onset }) => onset.n / onset.d),
      [0, 2, 3],
    );
    assert.match(text, /^count /);
    assert.ok(
      report.remarks.some((remark) => remark.startsWith('Bar 1: the columns of the row divide into no time')),
    );
  });

  it('tells what it leaves empty by its bar, and why', () => {
    const { report, text } = fill('chords |G       |Hm      |Xq      |\n');
    assert.ok(report.remarks.some((remark) => remark.startsWith('Bar 2: Hm is left empty: H is B here')));
    assert.ok(report.remarks.some((remark) => remark.startsWith('Bar 3: Xq is left empty: ')));
    assert.match(report.remarks[0] ?? '', /^1 of 3 chords has its shape/);
    const [system] = opened(text).systems;
    assert.deepEqual([...new Set(system?.reading.notes.map(({ bar }) => bar))], [0]);
    const none = fill('chords |G13     |\n', { highestFret: 0 });
    assert.ok(
      none.report.remarks.some((remark) =>
        /^Bar 1: G13 is left empty: no shape .* up to fret 0/.test(remark),
      ),
      none.report.remarks.join('\n'),
    );
  });

  it('goes by the wishes: closed, small, a highest fret', () => {
    const frets = (text: string): (number | undefined)[] =>
      opened(text).systems[0]?.reading.notes.map(({ fret }) => fret) ?? [];
    const song = 'chords |G       C       |D       Em      |\n';
    assert.ok(!frets(fill(song, { open: false }).text).includes(0));
    assert.ok(frets(fill(song, { open: true }).text).filter((fret) => fret === 0).length >= 6);
    assert.ok(Math.max(...frets(fill(song, { highestFret: 3 }).text).map((fret) => fret ?? 0)) <= 3);
    const { notes = [] } = opened(fill(song, { style: 'small' }).text).systems[0]?.reading ?? {};
    for (const onset of [0, 2, 4, 6]) {
      const together = notes.filter((note) => note.onset.n === onset && note.kind !== 'muted').length;
      assert.ok(together >= 3 && together <= 4, `${together} notes at ${onset}`);
    }
  });

  it('names chords as played under a full capo, and plays on other instruments', () => {
    const plain = fill('chords |G       C       |\n').text;
    const capo = fill('capo: 3\n\nchords |G       C       |\n').text;
    assert.equal(capo, `capo: 3\n\n${plain}`);
    const { text } = fill('instrument: ukulele\n\nchords |C       F       |\n');
    // The everyday C and F of the re-entrant ukulele: 0003 and 2010 (common practice).
    assert.deepEqual(
      linesFrom(text, 'A4').map((line) => line.slice(7, 17)),
      ['|3-------0', '|0-------1', '|0-------0', '|0-------2', ''],
    );
  });

  it('refuses what makes no sense in a sentence', () => {
    const ask = (text: string, more: object): unknown =>
      service.fillChords(opened(text), { range: undefined, ...more }, DEFAULT_SETTINGS);
    assert.deepEqual(ask('E4 |0---|\n', {}), {
      error: 'No chords row stands here; write one, such as chords |G   D   |Em  C   |, and try again.',
    });
    assert.deepEqual(ask(LEDGER, { highestFret: 2.5 }), {
      error: 'The highest fret is a whole number from 0 to 36, such as 5 or 12.',
    });
  });

  it('takes the systems of a range alone', () => {
    const document = opened(LEDGER);
    const line = document.systems[1]?.firstLine ?? 0;
    const range = { start: { line, character: 0 }, end: { line, character: 0 } };
    const result = service.fillChords(document, { range }, DEFAULT_SETTINGS);
    assert.ok(!('error' in result));
    assert.ok(result.edits.every((edit) => edit.range.start.line > line));
  });
});
