// What panels and the extension say to each other is read before it is believed.
import assert from 'node:assert/strict';
import { readFromShapes, readToShapes } from '../../../src/views/messages/shapesMessages';
import { readFromSheet, readToSheet } from '../../../src/views/messages/sheetMessages';

describe('messages of the panels', () => {
  const right: readonly (readonly [(value: unknown) => unknown, object])[] = [
    [readFromSheet, { kind: 'ready', from: '' }],
    [readFromSheet, { kind: 'handout', as: 'svg' }],
    [readToSheet, { kind: 'nothing', words: 'Put the cursor into a tab.' }],
    [readFromShapes, { kind: 'ask', tab: 'kin', chord: 'G' }],
    [readFromShapes, { kind: 'go', line: 3, column: 1 }],
    [readToShapes, { kind: 'begin', chord: null }],
  ];
  for (const [read, message] of right)
    it(`understood: ${JSON.stringify(message)}`, () => assert.equal(read(message), message));

  const wrong: readonly (readonly [(value: unknown) => unknown, unknown])[] = [
    [readFromSheet, { kind: 'ready' }],
    [readFromSheet, { kind: 'handout', as: 'pdf' }],
    [readFromSheet, { kind: 'insert', shape: 'x 3 2 0 1 0' }],
    [
      readToSheet,
      { kind: 'sheet', sheet: {}, strain: null, strainProblem: '', choices: [], fromProblem: '' },
    ],
    [readFromShapes, { kind: 'ask', tab: 'chords', chord: 'G' }],
    [readFromShapes, { kind: 'go', line: -1, column: 1 }],
    [readToShapes, { kind: 'shapes', asked: 'G', answer: { chord: 'G' } }],
    [readToShapes, 'begin'],
    [readToShapes, null],
  ];
  for (const [read, message] of wrong)
    it(`not understood: ${JSON.stringify(message)}`, () => assert.equal(read(message), undefined));
});
