import assert from 'node:assert/strict';
import { createLanguageService } from '../../../../src/service/languageService';
import type { SingerAnswer, SingerRequest, SingerWay } from '../../../../src/service/singer/singerAnswer';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';

const service = createLanguageService();

/** A tune of E4 to G4 over a bass; the words stand over the tune. */
const TAB = `
words |Low  wa- ter
E4    |3---2---|0---3---|
B3    |--------|1---0---|
G3    |--------|--------|
D3    |--------|--------|
A2    |--------|--------|
E2    |3-------|--------|
`;

function result(fields: string, request: Omit<SingerRequest, 'range'>, tab = TAB): SingerAnswer | string {
  const document = service.open(`${fields}\n${tab}`, DEFAULT_SETTINGS);
  const answer = service.fitSinger(document, { range: undefined, ...request }, DEFAULT_SETTINGS);
  return 'error' in answer ? answer.error : answer;
}

function ask(fields: string, request: Omit<SingerRequest, 'range'>, tab = TAB): SingerAnswer {
  const answer = result(fields, request, tab);
  assert.ok(typeof answer === 'object', typeof answer === 'string' ? answer : '');
  return answer;
}

/** The sentence of a refusal. */
function refusal(fields: string, request: Omit<SingerRequest, 'range'>, tab = TAB): string {
  const answer = result(fields, request, tab);
  assert.ok(typeof answer === 'string', 'it is answered');
  return answer;
}

function capoWay({ ways }: SingerAnswer, capo: string): SingerWay {
  const way = ways.find((one) => one.kind === 'capo' && one.capo === capo);
  assert.ok(way, ways.map(({ title }) => title).join('; '));
  return way;
}

describe('fit a singer: shapes of … sound in …', () => {
  // The first row: playing-conventions.md 5.2 [guitarscholar.co.uk]. The others: the table of capos 1 to 5 over shapes of
  // C, G, D, A and E, improvis.io/guides/guitar-capo-chord-shapes; its C# and F# are spelled as their keys are.
  const CAPOS: readonly (readonly [string, number, string])[] = [
    ['G', 3, 'Bb'],
    ['C', 2, 'D'],
    ['C', 3, 'Eb'],
    ['C', 5, 'F'],
    ['G', 1, 'Ab'],
    ['G', 2, 'A'],
    ['G', 5, 'C'],
    ['D', 1, 'Eb'],
    ['D', 3, 'F'],
    ['D', 4, 'F#'],
    ['A', 1, 'Bb'],
    ['A', 2, 'B'],
    ['E', 1, 'F'],
    ['E', 4, 'Ab'],
  ];
  for (const [shapes, capo, sounds] of CAPOS)
    it(`${shapes} with capo ${capo} sounds in ${sounds}`, () => {
      const answer = ask(`key: ${shapes}`, { key: sounds });
      assert.equal(answer.ways[0]?.kind, 'capo');
      const way = capoWay(answer, String(capo));
      assert.equal(way.words, `Shapes of ${shapes} major sound in ${sounds} major`);
      assert.equal(way.halfSteps, capo);
      assert.equal(way.strain.change, 0);
      assert.equal(way.fretsLeft, 22 - capo);
    });

  it('shapes keep their name when all strings are tuned down', () => {
    const answer = ask('key: F\ntuning: standard -2', { key: 'G' });
    assert.equal(answer.here.words, 'Shapes of G major sound in F major');
    assert.equal(capoWay(answer, '2').words, 'Shapes of G major sound in G major');
    // Back to standard: nothing goes above what the strings are made for.
    const up = answer.ways.find(({ kind }) => kind === 'tuning');
    assert.equal(up?.tuning, 'standard');
    assert.deepEqual(up.cautions, []);
  });

  it('without a key the first chord tells it', () => {
    const tab = TAB.replace('words |', 'chords |C\nwords |');
    const { here } = ask('capo: 3', { voice: 'alto' }, tab);
    assert.equal(here.words, 'A shape of C sounds as Eb');
    assert.equal(
      ask('capo: 3', { voice: 'alto' }).here.words,
      'Shapes sound 3 half steps higher than their names',
    );
  });
});

describe('fit a singer: how the tune lies', () => {
  it('the tune is what stands under words, of a chord its top note', () => {
    const { tune } = ask('key: G', { voice: 'alto' });
    assert.deepEqual([tune?.low, tune?.high, tune?.name], ['E4', 'G4', 'the top notes under the words']);
  });

  it('without words the highest of what sounds at each moment, so that basses do not count', () => {
    const tab = TAB.replace(/words.*\n/, '').replace('E2    |3-------', 'E2    |3-3-3-3-');
    const { tune } = ask('key: G', { voice: 'alto' }, tab);
    assert.deepEqual([tune?.low, tune?.high, tune?.name], ['E4', 'G4', 'the top line']);
  });

  it('a line of single notes counts with all of them, and a bend with what it reaches', () => {
    const tab = '\nE4 |0-----7b9-|\nB3 |--1-------|\n';
    const { tune } = ask('', { voice: 'alto' }, tab);
    assert.deepEqual([tune?.low, tune?.high, tune?.name], ['C4', 'C#5', 'the notes']);
  });

  it('a part is taken by its name', () => {
    const parts = `part: low\n${TAB}\npart: Voice\n\nE4 |5-------|\nB3 |--------|\nG3 |--------|\nD3 |--------|\nA2 |--------|\nE2 |--------|\n`;
    const { tune } = ask('', { voice: 'alto', tunePart: 'voice' }, parts);
    assert.deepEqual([tune?.low, tune?.high, tune?.name], ['A4', 'A4', 'the notes of the part Voice']);
    assert.equal(
      result('', { voice: 'alto', tunePart: 'drum' }, parts),
      'There is no part “drum”; the parts are low, Voice.',
    );
  });

  it('counted by hand: D4 to E5 for A3 to D5', () => {
    // The tune spans 14 half steps, the voice 17: the middle is 1.5 half steps off each end, 3 or 4 half steps lower.
    const answer = ask('key: G', { compass: 'A3-D5', low: 'D4', high: 'E5' });
    assert.deepEqual([answer.here.lies?.under, answer.here.lies?.above], [5, -2]);
    assert.equal(answer.tooWide, 0);
    assert.equal(answer.here.lies?.words, 'Sung D4–E5: 2 half steps above the voice');
    const down = answer.ways.find(({ kind, halfSteps }) => kind === 'tuning' && halfSteps === -3);
    assert.deepEqual([down?.lies?.under, down?.lies?.above, down?.sounds], [2, 1, 'E major']);
    assert.equal(down?.lies?.words, 'Sung B3–C#5: 2 half steps of room under, 1 above');
    // Two half steps down is the least that fits; nothing that goes beyond the voice stands before what does not.
    const over = answer.ways.map(
      ({ lies }) => Math.max(0, -(lies?.under ?? 0)) + Math.max(0, -(lies?.above ?? 0)),
    );
    assert.deepEqual(
      over,
      [...over].sort((a, b) => a - b),
    );
    assert.equal(over[0], 0);
  });

  it('a voice an octave away sings in its own octave', () => {
    const { here } = ask('key: G', { voice: 'tenor', low: 'D4', high: 'E5' });
    assert.equal(here.lies?.octaves, -1);
    assert.equal(here.lies.words, 'Sung in the octave below, D3–E4: 0 half steps of room under, 5 above');
  });

  it('a tune wider than the voice: by how much, and the least beyond it first', () => {
    const answer = ask('key: G', { compass: 'C4-C5', low: 'C4', high: 'E5' });
    assert.equal(answer.tooWide, 4);
    assert.match(answer.remarks[0] ?? '', /^The tune is 4 half steps wider than the voice/);
    const { under = 0, above = 0 } = answer.ways[0]?.lies ?? {};
    assert.equal(Math.max(0, -under) + Math.max(0, -above), 4);
  });

  it('what fits as it stands, in the middle, is left as it is', () => {
    const { ways } = ask('key: G', { compass: 'A3-C5', low: 'C4', high: 'A4' });
    assert.equal(ways[0]?.kind, 'as it stands');
    assert.equal(ways[0].request, null);
  });
});

describe('fit a singer: strings and neck', () => {
  it('tension by tuning, 2^(k/6) (strings-and-frets.md P8)', () => {
    const answer = ask('key: G', { key: 'F', compass: 'A3-D5', low: 'D4', high: 'E5' });
    const way = answer.ways.find(({ kind }) => kind === 'tuning');
    assert.deepEqual([way?.halfSteps, way?.strain.change, way?.strain.least], [-2, -21, 79]);
  });

  it('raising brings the usual cautions and stands behind a capo', () => {
    const answer = ask('key: G', { key: 'Ab' });
    const kinds = answer.ways.map(({ kind }) => kind);
    assert.equal(kinds[0], 'capo');
    const up = answer.ways.find(({ kind, halfSteps }) => kind === 'tuning' && halfSteps === 1);
    assert.match(up?.cautions[0] ?? '', /luthier/);
    assert.match(up?.cautions[0] ?? '', /12 % more tension/);
    assert.ok(
      answer.ways.filter(({ kind }) => kind === 'capo').every(({ cautions }) => cautions.length === 0),
    );
  });

  it('strings go up no further than they bear', () => {
    // Octave strings of a 12-string are near breaking as they are (strings-and-frets.md §2.3).
    const tab = TAB.replace(/words.*\n/, '');
    const { ways } = ask('instrument: 12-string guitar\nkey: G', { key: 'Ab' }, tab);
    assert.ok(ways.length > 0);
    assert.ok(ways.every(({ strain }) => strain.change <= 0));
    // And on a guitar not beyond two half steps over the usual tuning.
    for (const { strain } of ask('key: G', { voice: 'soprano' }).ways) assert.ok(strain.most <= 126);
  });

  it('a capo is not put where a fret would leave the neck, nor beyond the fret that was asked for', () => {
    const high = TAB.replace('|3---2---|', '|20--2---|');
    const frets = ask('key: G', { key: 'Bb' }, high).ways.map(({ capo }) => capo);
    assert.ok(!frets.includes('3'));
    const low = ask('key: G', { voice: 'soprano', highestCapo: 2 });
    for (const { capo } of low.ways) assert.ok(capo === 'none' || Number(capo) <= 2);
  });

  it('a partial capo and a bar leave only the tuning', () => {
    const partial = ask('key: E\ncapo: 2 on 5 4 3', { voice: 'alto' });
    assert.ok(
      partial.ways.every(({ kind, capo }) => kind !== 'capo' && kind !== 'both' && capo === '2 on 5 4 3'),
    );
    assert.match(partial.remarks.join(' '), /partial capo stays/);
    const lap = ask('instrument: lap steel', { voice: 'alto', low: 'D4', high: 'E5' });
    assert.ok(lap.ways.every(({ kind }) => kind !== 'capo' && kind !== 'both'));
  });
});

describe('fit a singer: what cannot be read is told in a sentence', () => {
  const CASES: readonly (readonly [string, Omit<SingerRequest, 'range'>, RegExp])[] = [
    ['key: G', {}, /^Say what suits the singer/],
    ['key: G', { voice: 'alt' }, /is no voice with a usual range/],
    ['key: G', { compass: 'high' }, /^Write the lowest and the highest note/],
    ['key: G', { key: 'Q' }, /^A key is a tonic/],
    ['key: G', { key: 'Em' }, /shapes that stay keep its mode; give a key such as E major/],
    ['', { key: 'Bb' }, /no key to start from/],
    ['key: G', { voice: 'alto', low: 'D4' }, /^Give both/],
    ['key: G', { voice: 'alto', low: 'D', high: 'E' }, /^Give both/],
    ['key: G', { voice: 'alto', tunePart: 'Voice' }, /no parts with names/],
    ['key: G', { voice: 'alto', highestCapo: -1 }, /from 0 to 36/],
  ];
  for (const [fields, request, sentence] of CASES)
    it(JSON.stringify(request), () => assert.match(refusal(fields, request), sentence));

  it('no tab, and no tune', () => {
    assert.match(refusal('', { voice: 'alto' }, ''), /no tab/);
    assert.match(refusal('', { voice: 'alto' }, '\nE4 |x---|\n'), /no tune to be found/);
  });
});
