import assert from 'node:assert/strict';
import type { Range } from '../../../src/service/records';
import { service, settings } from './cursor';

const EVERYTHING: Range = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };

/** The document with its hints in angle quotes. */
function hinted(text: string): string {
  const document = service.open(text, settings);
  for (const { place, label } of [...service.inlayHints(document, EVERYTHING)].reverse())
    document.edit([{ range: { start: place, end: place }, newText: `«${label}»` }]);
  return document.text();
}

describe('inlay hints', () => {
  it('say the octaves that a tuning value leaves unsaid', () => {
    assert.equal(hinted('tuning: D A D G A D\n'), 'tuning: D A D G A D«D2 A2 D3 G3 A3 D4»\n');
    assert.equal(hinted('tuning: open E  \n'), 'tuning: open E«E2 B2 E3 G#3 B3 E4»  \n');
    assert.equal(hinted('tuning: D2 A D3 G3 A3 D4'), 'tuning: D2 A D3 G3 A3 D4«D2 A2 D3 G3 A3 D4»');
  });

  it('say nothing where octaves are written, where the value is overruled or cannot be read', () => {
    for (const value of [
      'D2 A2 D3 G3 A3 D4',
      'd2-a2-d3-g3-a3-d4',
      'D2, A2, D3, G♯3-14c, A3, D4',
      'DADGAD (D2 A2 D3 G3 A3 D4)',
      'blorp',
      '',
    ])
      assert.equal(hinted(`tuning: ${value}\n`), `tuning: ${value}\n`);
    assert.equal(
      hinted('tuning: open E\ntuning: D2 A2 D3 G3 A3 D4'),
      'tuning: open E\ntuning: D2 A2 D3 G3 A3 D4',
    );
    assert.equal(
      hinted('instrument: 12-string guitar\ntuning: D2 A2 D3 G3 A3 D4'),
      'instrument: 12-string guitar\ntuning: D2 A2 D3 G3 A3 D4',
    );
  });

  it('are never inside a system, and only where they are asked for', () => {
    const document = service.open('tuning: DADGAD\n\nD4 |0-|\n\ntuning: open D\n\nD4 |0-|\n', settings);
    const range: Range = { start: { line: 1, character: 0 }, end: { line: 6, character: 0 } };
    assert.deepEqual(
      service.inlayHints(document, range).map(({ place }) => place),
      [{ line: 4, character: 14 }],
    );
  });
});

/** Each token on a line of its own: the text, its type and modifiers. */
function tokens(text: string, range?: Range): readonly string[] {
  const document = service.open(text, settings);
  return service
    .semanticTokens(document, range)
    .map(({ line, start, length, type, modifiers }) =>
      [document.line(line).text.slice(start, start + length), type, ...modifiers].join(' '),
    );
}

describe('semantic tokens', () => {
  it('fields, sections and rows by what they mean', () => {
    assert.deepEqual(
      tokens('tuning: open E\n[Verse] x2\nprose\n# remark\nchords |Am7 |\ncount |1 & |\nE2    |0---| twice'),
      [
        'tuning tabField',
        'open E tabValue',
        '[Verse] tabSection',
        'x2 tabRemark',
        'chords tabRow',
        '| tabBar',
        'Am7 tabChord',
        '| tabBar',
        'count tabRow',
        '| tabBar',
        '1 tabCount',
        '& tabCount',
        '| tabBar',
        'E2 tabLabel',
        '| tabBar',
        '0 tabFret',
        '| tabBar',
        'twice tabRemark',
      ],
    );
  });

  it('signs of a string', () => {
    assert.deepEqual(tokens('G3 |:5h7-x-<12>-(5)-7b9~.-:|').slice(1), [
      '|: tabBar',
      '5 tabFret',
      'h tabTechnique',
      '7 tabFret',
      'x tabMuted',
      '<12> tabHarmonic',
      '( tabFret ghost',
      '5 tabFret ghost',
      ') tabFret ghost',
      '7 tabFret',
      'b9 tabTechnique',
      '~ tabTechnique',
      '. tabMuted',
      ':| tabBar',
    ]);
  });

  it('frets that cannot be played where they stand', () => {
    const found = tokens('capo: 3 on 4 3 2\n\nE4 |35-|\nB3 |1--|\nG3 |5--|\nD3 |---|\nA2 |---|\nE2 |---|\n');
    assert.deepEqual(
      found.filter((token) => token.includes('tabFret')),
      ['35 tabFret outOfRange', '1 tabFret outOfRange', '5 tabFret'],
    );
  });

  it('of the lines that are asked for', () => {
    const range: Range = { start: { line: 1, character: 0 }, end: { line: 1, character: 3 } };
    assert.deepEqual(tokens('key: D\ncapo: 2\ntempo: 90', range), ['capo tabField', '2 tabValue']);
  });

  it('none for a table in prose', () => {
    assert.deepEqual(tokens('A | D | E | A |\nname | place'), []);
  });
});
