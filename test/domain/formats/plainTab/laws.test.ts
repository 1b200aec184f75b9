import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readPlainTab } from '../../../../src/formats/plainTab/readPlainTab';
import { writePlainTab } from '../../../../src/formats/plainTab/writePlainTab';
import { open } from '../../../../src/service/open';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { randomSong } from '../../service/change/randomSong';
import { randomTab } from '../../support/randomTab';

const SETTINGS = { settings: DEFAULT_SETTINGS };

/** Everything that sounds, system by system: string, fret, pitch, exact time, techniques. */
function sounding(text: string): unknown[] {
  return open(text, DEFAULT_SETTINGS).systems.map(({ reading }) =>
    reading.notes.map((note) => ({
      string: note.string,
      kind: note.kind,
      fret: note.fret,
      touched: note.touched,
      ghost: note.ghost,
      bar: note.bar,
      onset: `${note.onset.n}/${note.onset.d}`,
      pitches: note.pitches.map(({ midi }) => midi),
      techniques: note.techniques.map(({ kind, to }) => `${kind} ${to ?? ''}`),
    })),
  );
}

describe('what is written as plain tab', function () {
  this.timeout(20_000);
  it('reads back to the same notes at the same times, for tabs at random', () => {
    fc.assert(
      fc.property(randomTab, (tab) => {
        const plain = writePlainTab(open(tab, DEFAULT_SETTINGS), undefined).text;
        assert.deepEqual(sounding(readPlainTab(plain, SETTINGS).text), sounding(tab), plain);
      }),
      { numRuns: 100 },
    );
  });

  it('reads back for songs with fields that change on the way', () => {
    const song = randomSong.filter((text) => !text.includes('part:'));
    fc.assert(
      fc.property(song, (text) => {
        const plain = writePlainTab(open(text, DEFAULT_SETTINGS), undefined).text;
        assert.deepEqual(sounding(readPlainTab(plain, SETTINGS).text), sounding(text), plain);
      }),
      { numRuns: 60 },
    );
  });
});

/** Signs that no habit of tab has a meaning for. */
const STRANGE = ['§', '?', '$', '%', '@', ';', 'é', '„', 'q', 'Z', '字'] as const;
const CELLS = [
  '-',
  '-',
  '-',
  '-',
  '0',
  '3',
  '12',
  '5h7',
  'x',
  '7b9',
  '/5',
  '2sl4',
  '12*',
  '7^',
  '(5)',
  '|',
  ...STRANGE,
] as const;
const WORDS = [
  'Row',
  'softly',
  'x2',
  '1',
  '3-4',
  'Am',
  'capo',
  'II',
  '§7',
  '>',
  '|',
  'A:',
  '--',
  '#',
  '[x]',
  'é',
  '\u00a0',
  'key: H',
  'tuning: none',
] as const;

const line = fc
  .array(fc.constantFrom(...CELLS), { minLength: 4, maxLength: 30 })
  .map((cells) => cells.join(''));
const staff = fc
  .record({ lines: fc.array(line, { minLength: 6, maxLength: 6 }), labels: fc.boolean(), bar: fc.boolean() })
  .map(({ lines, labels, bar }) =>
    lines.map((one, i) => `${labels ? 'eBGDAE'.charAt(i) : ''}${bar ? '|' : ''}--${one}--${bar ? '|' : ''}`),
  );
const prose = fc
  .array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 6 })
  .map((words) => [words.join(' ')]);
const text = fc
  .array(fc.oneof(staff, prose, fc.constant([''])), { minLength: 1, maxLength: 6 })
  .map((blocks) => blocks.flat());

describe('a text that is pasted', function () {
  this.timeout(20_000);
  it('keeps every character that is not understood', () => {
    fc.assert(
      fc.property(text, (lines) => {
        const given = lines.join('\n');
        const answer = readPlainTab(given, SETTINGS);
        for (const sign of STRANGE)
          assert.equal(count(answer.text, sign), count(given, sign), `${sign} in ${answer.text}`);
        if (answer.systems === 0) assert.equal(answer.text, given);
        const out = new Set(answer.text.split('\n'));
        for (const at of answer.kept) {
          const kept = lines[at] ?? assert.fail();
          assert.ok(out.has(kept) || out.has(`# ${kept}`), `line ${kept}`);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('keeps words, numbers and letters of prose, in rows, fields or as they were', () => {
    fc.assert(
      fc.property(prose, staff, prose, (over, strings, under) => {
        const [above = ''] = over;
        const [below = ''] = under;
        const given = [
          above,
          ...strings.map((one, i) => (one.includes('|') ? one : `${'eBGDAE'.charAt(i)}|${one}`)),
          below,
        ];
        const answer = readPlainTab(given.join('\n'), SETTINGS);
        const out = answer.text;
        for (const word of [...above.split(/\s+/), ...below.split(/\s+/)])
          assert.ok(out.toLowerCase().includes(word.toLowerCase()), `${word} in\n${out}`);
      }),
      { numRuns: 200 },
    );
  });

  it('never fails, whatever it is, and reads the same twice', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (given) => {
        assert.deepEqual(readPlainTab(given, SETTINGS), readPlainTab(given, SETTINGS));
      }),
      { numRuns: 200 },
    );
  });
});

function count(text: string, sign: string): number {
  return text.split(sign).length - 1;
}

describe('hostile texts', () => {
  /** Characters; PEGBOX_HOSTILE=1000000 for the long run. */
  const SIZE = Number(process.env['PEGBOX_HOSTILE'] ?? 100_000);
  const texts: Readonly<Record<string, (size: number) => string>> = {
    'one line of dashes': (size) => '-'.repeat(size),
    'six lines of dashes': (size) => `e|${'-'.repeat(size / 6)}|\n`.repeat(6),
    'lines of a few dashes': (size) => '|---\n'.repeat(size / 5),
    'labels without end': (size) => 'e|-0-|\n'.repeat(size / 7),
    spaces: (size) => `e|---${' '.repeat(size)}x`,
    'marks of quotation': (size) => '> '.repeat(size / 2),
    'quoted lines': (size) => '> e|-0-|\n'.repeat(size / 9),
    'bar lines': (size) => `e|--${'|'.repeat(size)}`,
    digits: (size) => `e|--${'7'.repeat(size / 6)}|\n`.repeat(6),
    slides: (size) => `e|--${'5/7'.repeat(size / 18)}|\n`.repeat(6),
    words: (size) => 'open drop tuning D A down '.repeat(size / 26),
    'lines of words about tuning': (size) => 'Tuning: drop D, then DADGAD, capo 2\n\n'.repeat(size / 38),
    'open brackets': (size) => `e|--${'(['.repeat(size / 2)}`,
    'notes in a row': (size) => `tuned ${'A '.repeat(190)}\n`.repeat(size / 380),
    'tuning that changes': (size) =>
      'Tuning: drop D\n\nD|-0-|\nA|---|\n\nTuning: standard\n\nE|-0-|\nA|---|\n\n'.repeat(size / 78),
  };
  for (const [what, make] of Object.entries(texts)) {
    it(`${what}: is read before one gives up waiting, however long`, () => {
      const given = make(SIZE);
      const answer = readPlainTab(given, SETTINGS);
      if (answer.systems === 0) assert.equal(answer.text, given);
      else assert.ok(answer.text.length > 0 && answer.systems > 0);
    }).timeout(60_000);
  }
});
