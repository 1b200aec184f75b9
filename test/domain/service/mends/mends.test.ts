import assert from 'node:assert/strict';
import fc from 'fast-check';
import { diagnostics } from '../../../../src/service/diagnostics';
import { fixAll } from '../../../../src/service/mends/fixAll';
import { widerMends } from '../../../../src/service/mends/widerMends';
import { countOffers, writeCounts } from '../../../../src/service/mends/writeCounts';
import { open } from '../../../../src/service/open';
import { rewrites } from '../../../../src/service/rewrites';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import type { Mend, Range } from '../../../../src/service/records';
import { applyEdits, applyMend } from '../../checks/apply';

const doc = (text: string): ReturnType<typeof open> => open(text, DEFAULT_SETTINGS);
const at = (line: number): Range => ({ start: { line, character: 0 }, end: { line, character: 0 } });
const lines = (...texts: string[]): string => [...texts, ''].join('\n');
const fixed = (text: string): string => applyEdits(text, [...fixAll(doc(text), DEFAULT_SETTINGS)].reverse());

function named(mends: readonly Mend[], title: string): Mend {
  const found = mends.find((mend) => mend.title === title);
  assert.ok(found, `${title} is not among ${JSON.stringify(mends.map((mend) => mend.title))}`);
  return found;
}

/** Whether some mend of a diagnostic of this code gives the text. */
function mendOf(text: string, code: string, title: string): string {
  const document = doc(text);
  const found = diagnostics(document, DEFAULT_SETTINGS).find((one) => one.code === code);
  assert.ok(found, `${code} is not told`);
  return applyMend(text, named([...found.mends, ...widerMends(document, found)], title));
}

const OLD = lines('E|0---|', 'B|----|', 'G|----|', 'D|----|', 'A|----|', 'E|----|');
const NEW = lines('D|0---|', 'A|----|', 'G|----|', 'D|----|', 'A|----|', 'D|----|');

describe('labels after the tuning was changed', () => {
  it('are written in the whole file by one mend of any system', () => {
    const text = `tuning: DADGAD\n\n${OLD}\n[Out]\n${OLD}`;
    assert.equal(
      mendOf(text, 'usual-labels', 'Label all lines of the file by the tuning (2 systems)'),
      `tuning: DADGAD\n\n${NEW}\n[Out]\n${NEW}`,
    );
  });

  it('are on offer at the field, for what it holds for', () => {
    const text = `tuning: DADGAD\n\n${OLD}\n${OLD}\ntuning: standard\n\n${OLD}`;
    const mend = named(rewrites(doc(text), at(0)), 'Label the lines of both systems by this tuning');
    assert.equal(applyMend(text, mend), `tuning: DADGAD\n\n${NEW}\n${NEW}\ntuning: standard\n\n${OLD}`);
    const last = text.split('\n').lastIndexOf('tuning: standard');
    assert.deepEqual(rewrites(doc(text), at(last)), []);
  });

  it('keep to the part of the system', () => {
    const text = `part: low\ntuning: DADGAD\n\n${OLD}\n${OLD}\npart: high\ntuning: DADGAD\n\n${OLD}`;
    const own = 'Label all lines of low by the tuning (2 systems)';
    assert.equal(
      mendOf(text, 'usual-labels', own),
      `part: low\ntuning: DADGAD\n\n${NEW}\n${NEW}\npart: high\ntuning: DADGAD\n\n${OLD}`,
    );
  });

  it('are not on offer for the file where one system alone needs them', () => {
    const document = doc(`tuning: DADGAD\n\n${OLD}\n${NEW}`);
    const [found] = diagnostics(document, DEFAULT_SETTINGS);
    assert.ok(found?.code === 'usual-labels');
    assert.deepEqual(widerMends(document, found), []);
  });
});

describe('counts of many systems', () => {
  const system = lines(
    'A|0---2---4---5---|',
    'E|----------------|',
    'C|----------------|',
    'G|----------------|',
  );
  const counted = lines(
    'count |1   2   3   4   |',
    ...system
      .trimEnd()
      .split('\n')
      .map((line) => line.replace('|', '     |')),
  );
  const text = `instrument: ukulele\n\n[One]\n${system}\n${system}\n[Two]\n${system}`;

  it('are written over a section, or over the file', () => {
    const offers = countOffers(doc(text), at(4));
    assert.deepEqual(
      offers.map(({ title }) => title),
      [
        'Write the counts of One that were worked out (2 systems)',
        'Write the counts of the file that were worked out (3 systems)',
      ],
    );
    const [section, file] = offers;
    assert.ok(section && file);
    assert.equal(
      applyEdits(text, writeCounts(doc(text), at(4), section.id)),
      `instrument: ukulele\n\n[One]\n${counted}\n${counted}\n[Two]\n${system}`,
    );
    assert.equal(
      applyEdits(text, writeCounts(doc(text), at(4), file.id)),
      `instrument: ukulele\n\n[One]\n${counted}\n${counted}\n[Two]\n${counted}`,
    );
  });

  it('are not on offer outside systems, nor for one system', () => {
    assert.deepEqual(countOffers(doc(text), at(0)), []);
    assert.deepEqual(countOffers(doc(`instrument: ukulele\n\n${system}`), at(2)), []);
  });
});

describe('strings that are left out', () => {
  const whole = 'Write the 4 strings that are left out';

  it('are written above, between and below, under the rows', () => {
    const text = lines('chords |G   |C   |', 'B      |0---|1---|', '# low', 'A      |----|3---|');
    const after = applyMend(text, named(rewrites(doc(text), at(1)), whole));
    assert.equal(
      after,
      lines(
        'chords |G   |C   |',
        'E      |----|----|',
        'B      |0---|1---|',
        '# low',
        'G      |----|----|',
        'D      |----|----|',
        'A      |----|3---|',
        'E      |----|----|',
      ),
    );
  });

  it('make room where their labels are longer', () => {
    const text = `tuning: half step down\n\n${lines('E4|0-|')}`.replace('E4', 'Eb4');
    const after = applyMend(text, named(rewrites(doc(text), at(2)), 'Write the 5 strings that are left out'));
    assert.equal(
      after,
      `tuning: half step down\n\n${lines('Eb4|0-|', 'Bb3|--|', 'Gb3|--|', 'Db3|--|', 'Ab2|--|', 'Eb2|--|')}`,
    );
  });

  it('are written as the player says which they are, where labels do not', () => {
    const after = mendOf('E|0-2-|\n', 'strings-left-out', 'Write all 6 strings, with it as 6');
    assert.equal(after, lines('E4|----|', 'B3|----|', 'G3|----|', 'D3|----|', 'A2|----|', 'E2|0-2-|'));
  });

  it('are not on offer where all stand there', () => {
    assert.ok(!rewrites(doc(OLD), at(0)).some(({ title }) => title.includes('left out')));
  });

  it('change nothing that sounds, whichever strings there are', () => {
    const names = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'];
    fc.assert(
      fc.property(fc.subarray(names, { minLength: 1, maxLength: 5 }), fc.nat(9), (labels, fret) => {
        const text = lines(...labels.map((label, i) => `${label}|${fret}-${i}-|x--${i}|`));
        const [mend] = rewrites(doc(text), at(0)).filter(({ title }) => title.includes('left out'));
        assert.ok(mend);
        const heard = (of: string): unknown =>
          doc(of).systems.map(({ reading: { notes } }) =>
            notes.map(({ string, fret: at, onset }) => [string, at, onset]),
          );
        const after = applyMend(text, mend);
        assert.deepEqual(heard(after), heard(text));
        assert.deepEqual(
          after
            .trimEnd()
            .split('\n')
            .map((line) => line.slice(0, 2)),
          names,
        );
      }),
    );
  });
});

describe('loose rows above the strings', () => {
  const system = ['A|0---2---4---5---|', 'E|----------------|', 'C|----------------|', 'G|----------------|'];

  it('become rows, every mark over its column', () => {
    const text = `instrument: ukulele\n\n${lines('  Am      F', '  1   2   3   4', ...system)}`;
    const after = `instrument: ukulele\n\n${lines(
      'chords |Am      F',
      'count  |1   2   3   4',
      ...system.map((line) => line.replace('|', '      |')),
    )}`;
    assert.equal(mendOf(text, 'loose-row', 'Make it a row of chords'), after);
  });

  it('are told anew when the system under them is moved', () => {
    const document = doc(`instrument: ukulele\n\n${lines('  1   2   3   4', ...system)}`);
    const mends = (): string => JSON.stringify(diagnostics(document, DEFAULT_SETTINGS).map((d) => d.mends));
    const before = mends();
    document.edit([
      { range: { start: { line: 3, character: 1 }, end: { line: 3, character: 1 } }, newText: ' ' },
    ]);
    const after = mends();
    assert.notEqual(after, before);
    assert.equal(
      after,
      JSON.stringify(diagnostics(doc(document.text()), DEFAULT_SETTINGS).map((d) => d.mends)),
    );
  });

  it('are no count where they would not be read over these columns', () => {
    const text = `instrument: ukulele\n\n${lines('  4   3   2   1', ...system)}`;
    assert.ok(!diagnostics(doc(text), DEFAULT_SETTINGS).some(({ code }) => code === 'loose-row'));
  });
});

describe('all harmless mends at once', () => {
  it('are done together, those that meet one after the other, and the rest is left', () => {
    const text = lines(
      'tuning: DADGAD',
      'gauges: 10 13 17 26w 36w 46w',
      '',
      'E\t│0–––│2h1–|',
      'B |----|----|',
      'G |---------|',
      'D |----|----|',
      'A |----|----|',
      'E |----|----|',
    );
    assert.equal(
      fixed(text),
      lines(
        'tuning: DADGAD',
        'gauges: 46w 36w 26w 17 13 10',
        '',
        'D |0---|2h1-|',
        'A |----|----|',
        'G |----|----|',
        'D |----|----|',
        'A |----|----|',
        'D |----|----|',
      ),
    );
    assert.equal(fixed(fixed(text)), fixed(text));
  });

  it('do nothing where only mends that change something are on offer', () => {
    assert.deepEqual(fixAll(doc('capo:\ntuning: DADGAD\ntuning: open G\n\nG|5h3-|\n'), DEFAULT_SETTINGS), []);
  });

  it('keep line ends', () => {
    assert.equal(fixed('G4|0––|\r\nD4|---|\r\n'), 'G4|0--|\r\nD4|---|\r\n');
  });
});
