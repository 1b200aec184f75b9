import assert from 'node:assert/strict';
import { formatFraction } from '../../../../src/music/fraction';
import { Document } from '../../../../src/notation/document';
import { convert } from '../../../../src/service/change/convert';
import type { ConvertRequest } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { heard, missing } from '../change/heard';
import { changeOrRefusal, onRandomPassages, passage, taken } from './work';

const REQUESTS: readonly Omit<ConvertRequest, 'range' | 'newPart'>[] = [
  { tuning: 'standard' },
  { tuning: 'half step down', keep: 'sound' },
  { instrument: 'baritone guitar' },
  { instrument: 'ukulele', octaves: true },
];

describe('into a new part', () => {
  it('the original stays line by line and sounds as it did; the new part has the same bars and meters', () => {
    let done = 0;
    onRandomPassages(
      (text, range, choice) => {
        const document = new Document(text);
        const request = { range, ...REQUESTS[choice % REQUESTS.length], newPart: 'second' };
        const change = changeOrRefusal(convert(document, request, DEFAULT_SETTINGS));
        if (!change) return;
        done++;
        const after = taken(text, change);
        const told = `${text}\n---\n${after.text()}\n${JSON.stringify(change.report)}`;
        const { report } = change;
        assert.equal(report.notesIn, report.kept + report.moved + report.unplaced.length, told);

        const lines = after.text().split('\n');
        let at = -1;
        for (const line of text.trimEnd().split('\n')) {
          at = lines.indexOf(line, at + 1);
          assert.ok(at >= 0, `${line} is gone\n${told}`);
        }

        const [first] = passage(document, range);
        const part = first?.system.header.part;
        const others = heard(after, []).filter((note) => note.part !== 'second');
        const own = heard(document, []);
        const plain = (note: (typeof own)[number]): string =>
          `${note.bar} ${note.sound.replace(part === undefined ? /^\S* / : /^/, '')} ${note.place}`;
        if (document.parts.length === 1)
          assert.deepEqual(others.map(plain).map(bare), own.map(plain).map(bare), told);
        else assert.equal(others.length, own.length, told);

        assert.deepEqual(bars(after, 'second'), bars(document, part), told);
        const news = heard(after, []).filter((note) => note.part === 'second');
        assert.equal(news.length, report.notesIn - report.unplaced.length, told);
        assert.deepEqual(
          after.systems
            .flatMap(({ reading }) => reading.problems.map(({ kind }) => kind))
            .filter(
              (kind) =>
                !document.systems.some(({ reading }) => reading.problems.some((p) => p.kind === kind)),
            )
            .filter((kind) => kind !== 'slide-off'),
          [],
          told,
        );
      },
      Number(process.env['HAND_RUNS'] ?? 40),
    );
    assert.ok(done > 5);
  });

  it('stands under each section of the original, with its own fields stated once', () => {
    const text = `tuning: standard

[Verse]

E4 |0---|
B3 |----|
G3 |----|
D3 |----|
A2 |----|
E2 |----|

[Chorus]
meter: 3/4

E4 |3--|
B3 |---|
G3 |---|
D3 |---|
A2 |---|
E2 |---|
`;
    const change = changeOrRefusal(
      convert(new Document(text), { range: undefined, tuning: 'DADGAD', newPart: 'low' }, DEFAULT_SETTINGS),
    );
    assert.ok(change);
    const after = taken(text, change);
    assert.deepEqual(
      after.systems.map(({ header, section }) => [
        header.part,
        section?.name,
        header.meter.upper,
        header.tuning.text,
      ]),
      [
        ['guitar', 'Verse', 4, 'standard'],
        ['low', 'Verse', 4, 'DADGAD'],
        ['guitar', 'Chorus', 3, 'standard'],
        ['low', 'Chorus', 3, 'DADGAD'],
      ],
    );
    assert.equal(after.text().match(/^tuning:/gm)?.length, 2);
  });

  it('refuses a name that is taken, and several parts at once', () => {
    const text = 'part: low\n\nE4|0---|\n\npart: high\n\nE4|0---|\n';
    const refuse = (range: ConvertRequest['range'], newPart: string): string => {
      const result = convert(new Document(text), { range, tuning: 'DADGAD', newPart }, DEFAULT_SETTINGS);
      assert.ok('error' in result);
      return result.error;
    };
    const first = { start: { line: 2, character: 3 }, end: { line: 2, character: 4 } };
    assert.match(refuse(first, 'high'), /already; give the new part another name/);
    assert.match(refuse(first, ' '), /Give the new part a name/);
    assert.match(refuse(undefined, 'third'), /choose a passage of one of them/);
  });
});

/** Without the part's name, which the original may have got. */
function bare(line: string): string {
  return line.replace(/^(\d+) \S* (?=\d+\/\d+ )/, '$1 ').replace(/^(\d+) (?:\S+ )?(\d+\/\d+)/, '$1 $2');
}

/** The bars of a part: their lengths, meters and repeats. */
function bars(document: Document, part: string | undefined): string[] {
  const list = document.systems
    .filter(({ header }) => header.part === part)
    .flatMap(({ header, reading }) =>
      reading.bars.map(
        ({ length, pickup, openSign, closeSign }) =>
          `${formatFraction(length)} of ${header.meter.upper}/${header.meter.lower} ${pickup} ${openSign}${closeSign}`,
      ),
    );
  assert.equal(missing(list, list).length, 0);
  return list;
}
