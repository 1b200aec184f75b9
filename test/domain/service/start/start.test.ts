import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { INSTRUMENTS } from '../../../../src/instrument/instruments';
import { formatTuningNotes } from '../../../../src/instrument/tuningFormat';
import { tuningsFor } from '../../../../src/instrument/tunings';
import { formatNoteList } from '../../../../src/instrument/noteList';
import { toNumber } from '../../../../src/music/fraction';
import { barLength, readMeter } from '../../../../src/music/meter';
import {
  LAYOUT_ROWS,
  type NewTabAnswer,
  type NewTabRequest,
} from '../../../../src/service/start/startAnswer';
import { openAt, service, settings } from '../cursor';

function newTab(request: NewTabRequest): NewTabAnswer {
  const answer = service.newTab(request, settings);
  assert.ok(!('error' in answer), JSON.stringify(answer));
  return answer;
}

/** Where the mark of the cursor stands after a system was put in. */
function inserted(marked: string, request = {}): string {
  const { document, place } = openAt(marked);
  const result = service.insertSystem(document, place, request);
  assert.ok(!('error' in result) && result.goesOn, JSON.stringify(result));
  document.edit(result.edits);
  const lines = document.text().split('\n');
  const { line, character } = result.goesOn;
  const text = lines[line] ?? '';
  lines[line] = `${text.slice(0, character)}<|>${text.slice(character)}`;
  return lines.join('\n');
}

describe('a new tab', () => {
  for (const instrument of INSTRUMENTS) {
    it(`${instrument.name}: every tuning reads back, with a line for each string and nothing to complain of`, () => {
      for (const tuning of tuningsFor(instrument)) {
        const { text, cursor } = newTab({
          instrument: instrument.name,
          tuning: tuning.name,
          rows: LAYOUT_ROWS,
        });
        const document = service.open(text, settings);
        const [system, ...more] = document.systems;
        assert.ok(system && more.length === 0, text);
        assert.equal(system.header.instrument.name, instrument.name);
        assert.equal(formatTuningNotes(system.header.tuning), formatNoteList(tuning.strings));
        assert.equal(system.reading.strings.length, tuning.strings.length);
        assert.deepEqual(
          // What strings bear is told of some tunings, and is to be.
          service
            .diagnostics(document, settings)
            .filter(({ severity, code }) => severity === 'error' && code !== 'string-near-breaking'),
          [],
          text,
        );
        assert.deepEqual(system.reading.problems, [], text);
        // In the first cell of string 1: the top string line, right behind its bar sign.
        const line = document.line(cursor.line);
        assert.ok(line.kind === 'string' && line.bodyStart + 1 === cursor.character);
        assert.equal(system.reading.strings[0]?.line, cursor.line - system.firstLine);
      }
    });
  }

  const meters = [
    '4/4',
    '3/4',
    '2/4',
    '5/4',
    '7/8',
    '6/8',
    '9/8',
    '12/8',
    '6/16',
    '2/2',
    '11/8',
    '1/1',
    '64/64',
  ];
  for (const meter of meters) {
    it(`${meter}: bars have its length, and every column its even share of it, counted or not`, () => {
      const read = readMeter(meter);
      assert.ok(read.ok);
      const length = toNumber(barLength(read.value));
      for (const columns of [undefined, 1, 2, 3, 4, 6, 8, 9, 12, 16, 24]) {
        for (const rows of [[], ['count'] as const]) {
          const request = { meter, rows, bars: 2, ...(columns !== undefined && { columns }) };
          const answer = service.newTab(request, settings);
          const dotted = /^(?:6|9|12)\/(?:8|16)$/.test(meter);
          if (dotted && columns !== undefined && columns % 3 !== 0) {
            assert.ok('error' in answer && answer.error.includes('dotted'));
            continue;
          }
          assert.ok(!('error' in answer));
          const [system] = service.open(answer.text, settings).systems;
          assert.ok(system);
          const { bars, columnTimes } = system.reading;
          assert.equal(bars.length, 2);
          bars.forEach((bar, i) => {
            assert.equal(toNumber(bar.length), length);
            const width = bar.endColumn - bar.startColumn;
            for (let at = 0; at < width; at++) {
              const time = columnTimes[bar.startColumn + at];
              assert.ok(time);
              assert.ok(Math.abs(toNumber(time) - length * (i + at / width)) < 1e-9, answer.text);
            }
          });
        }
      }
    });
  }

  it('says what it was given and leaves the usual unsaid', () => {
    assert.ok(
      newTab({ tuning: 'E  B E G# B E' }).text.startsWith(
        'title:  New tab\ntuning: E B E G# B E\nmeter:  4/4\n\nE4  |',
      ),
    );
    assert.match(newTab({ instrument: 'bass' }).text, /^instrument: bass$/m);
  });

  const refused: readonly (readonly [NewTabRequest, RegExp])[] = [
    [{ instrument: 'banjoo' }, /no instrument “banjoo”/],
    [{ tuning: 'H' }, /./],
    [{ meter: '4/5' }, /^A meter is two numbers/],
    [{ bars: 0 }, /^A system is laid out with 1 to 16 bars, not 0\.$/],
    [{ bars: 2.5 }, /not 2\.5/],
    [{ columns: 5 }, /one of 1, 2, 3, 4, 6, 8, 9, 12, 16, 24, not 5\.$/],
  ];
  for (const [request, expected] of refused) {
    it(`tells what is wrong with ${JSON.stringify(request)}`, () => {
      const answer = service.newTab(request, settings);
      assert.ok('error' in answer);
      assert.match(answer.error, expected);
    });
  }
});

describe('what a tab may begin with', () => {
  it('is every instrument, the guitar first', () => {
    const names = service.instruments().map(({ name }) => name);
    assert.equal(names[0], 'guitar');
    assert.deepEqual(new Set(names), new Set(INSTRUMENTS.map(({ name }) => name)));
  });

  // Open strings of DADGAD: D A D G A D, the notes of Dsus4. Common practice.
  it('is every tuning of the instrument, with its notes and what they make, the usual one first', () => {
    const tunings = service.startingTunings(undefined, settings);
    assert.ok(!('error' in tunings));
    assert.equal(tunings[0]?.steps, 'as it is');
    const dadgad = tunings.find(({ value }) => value === 'DADGAD');
    assert.equal(dadgad?.notes, 'D2 A2 D3 G3 A3 D4');
    assert.equal(dadgad.chord, 'Dsus4');
    assert.equal(dadgad.steps, 'string 6 down 2, string 2 down 2, string 1 down 2');
  });

  it('is a tuning of the user’s own too', () => {
    const own = { ...settings, tunings: { harbour: 'C2 G2 D3 G3 B3 D4' } };
    const tunings = service.startingTunings('guitar', own);
    assert.ok(!('error' in tunings) && tunings.some(({ value }) => value === 'harbour'));
    const answer = service.newTab({ tuning: 'harbour' }, own);
    assert.ok(!('error' in answer));
    assert.match(answer.text, /^C2 \|/m);
  });
});

describe('a system is inserted', () => {
  it('behind the system of the cursor, with its labels, the cursor in the first cell', () => {
    assert.equal(
      inserted('tuning: G3 D4\n\n  d |--<|>0-|\n  g |0---|\n\nMore.\n', { bars: 1, columns: 2 }),
      'tuning: G3 D4\n\n  d |--0-|\n  g |0---|\n\n  d |<|>--------|\n  g |--------|\n\nMore.\n',
    );
  });

  it('on a blank line, for the tuning in force there, with rows and room for their words', () => {
    assert.equal(
      inserted('tuning: D2 A2\n\n<|>\n', { bars: 2, columns: 1, rows: ['chords', 'count'] }),
      'tuning: D2 A2\n\ncount  |1234|1234|\nchords |    |    |\nA2     |<|>----|----|\nD2     |----|----|\n\n',
    );
  });

  it('behind the fields that the cursor is in', () => {
    const text = inserted('tuning: <|>D2 A2\nmeter: 2/4\n', { bars: 1, columns: 1 });
    assert.equal(text, 'tuning: D2 A2\nmeter: 2/4\n\nA2 |<|>--|\nD2 |--|\n');
  });
});

describe('snippets', () => {
  const file = path.resolve(__dirname, '../../../../snippets/pegbox.json');
  const snippets = JSON.parse(readFileSync(file, 'utf8')) as Record<
    string,
    { readonly body: readonly string[]; readonly description: string }
  >;
  /** As it stands when every placeholder keeps its text. */
  const plain = (body: readonly string[]): string =>
    body
      .join('\n')
      .replace(/\$\{\d+:([^}]*)\}/g, '$1')
      .replace(/\$\{\d+\|([^,|}]*)[^}]*\}/g, '$1')
      .replace(/\$\d+/g, '');

  for (const [name, { body }] of Object.entries(snippets)) {
    it(`${name}: nothing in it is wrong`, () => {
      const text = name === 'Count row' ? withStrings(plain(body)) : plain(body);
      const document = service.open(text, settings);
      assert.deepEqual(
        service.diagnostics(document, settings).map(({ code, message }) => `${code}: ${message}`),
        [],
        text,
      );
      assert.ok(
        document.systems.length > 0 || document.fieldGroups.length > 0 || document.sections.length > 0,
      );
    });
  }

  function withStrings(row: string): string {
    const { text } = newTab({});
    return `${row}\n${text.slice(text.indexOf('E4')).replaceAll(/^(..) /gm, '$1    ')}`;
  }
});
