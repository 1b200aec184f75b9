import assert from 'node:assert/strict';
import { hoverLines, openAt, service, settings } from './cursor';

describe('hover of a field', () => {
  it('its name says what it is for and what it takes', () => {
    assert.deepEqual(hoverLines('ca<|>po: 2'), [
      'capo: Where the capo stands; under a full capo frets count from it.',
      'A fret (3), none, or a fret and the strings that a partial capo covers (2 on 5 4 3).',
    ]);
  });

  // Frequencies: twelve-tone equal temperament at A4 = 440 Hz (ISO 16:1975), T1.
  it('a tuning: strings, notes, frequencies, steps and what they make', () => {
    assert.deepEqual(hoverLines('tuning: DAD<|>GAD'), [
      'DADGAD · D2 A2 D3 G3 A3 D4',
      '- String 1: D4, 293.7 Hz, down 2 half steps',
      '- String 2: A3, 220.0 Hz, down 2 half steps',
      '- String 3: G3, 196.0 Hz',
      '- String 4: D3, 146.8 Hz',
      '- String 5: A2, 110.0 Hz',
      '- String 6: D2, 73.4 Hz, down 2 half steps',
      'The open strings make Dsus4 (suspended fourth, no third); also Gsus2/D',
      // Row 9 of the handbook table of tunings; the barres by transposing, common practice, no source.
      'Tune string by string at frets 7 5 5 2 5: string 6 at fret 7 gives string 5, and so on',
      'Straight barres: open Dsus4, fret 5 Gsus4 and fret 7 Asus4',
      'Steps are counted from the usual tuning of the guitar, frequencies at A4 = 440 Hz, without a capo',
    ]);
  });

  it('a tuning that raises strings comes with the usual cautions', () => {
    const told = hoverLines('tuning: open<|> E').join('\n');
    assert.match(told, /raises strings by up to 2 half steps/);
    assert.match(told, /string maker’s figures/);
    assert.match(told, /luthier/);
    const high = hoverLines('tuning: high<|> strung').join('\n');
    assert.match(high, /lighter strings/);
    assert.doesNotMatch(high, /more tension/);
    assert.doesNotMatch(hoverLines('tuning: open<|> D').join('\n'), /raises strings|luthier/);
  });

  it('each other value says in a line or two what was understood', () => {
    const told = (marked: string): readonly string[] => hoverLines(marked);
    assert.deepEqual(told('capo: <|>2'), [
      'Capo at fret 2, on every string: frets count from it',
      'Open strings sound F#2 B2 E3 A3 C#4 F#4; written standard, all 2 half steps higher',
    ]);
    assert.deepEqual(told('capo: 2 on 5<|>-3'), [
      'Partial capo at fret 2 on strings 5, 4 and 3; 6, 2 and 1 stay free',
      'Open strings sound E2 B2 E3 A3 B3 E4; frets count from the nut on every string',
    ]);
    assert.deepEqual(told('capo: <|>none'), ['No capo: frets count from the nut']);
    assert.deepEqual(told('key: <|>Em'), ['E minor: E F# G A B C D']);
    assert.deepEqual(told('capo: 2\nkey: <|>D'), [
      'D major: D E F# G A B C#',
      'With the capo it sounds in E major: E F# G# A B C# D#',
    ]);
    assert.deepEqual(told('key: <|>F'), ['F major: F G A Bb C D E', 'Open strings outside the key: B']);
    assert.deepEqual(told('meter: 6<|>/8'), [
      '6/8: a bar has 2 dotted beats of three lower notes, 3 quarter notes long',
    ]);
    assert.deepEqual(told('tempo: dotted <|>quarter = 60'), ['90 quarter notes a minute']);
    assert.equal(told('scale length: 25.5<|> in')[0], '647.7 mm (25.50 in) from nut to saddle');
    assert.deepEqual(told('pitch: 44<|>2'), ['A4 sounds at 442 Hz']);
    assert.deepEqual(told('frets: 2<|>4'), ['The neck has 24 frets']);
    assert.deepEqual(told('fretting: sl<|>ide'), ['slide: one straight bar stops all strings']);
    assert.deepEqual(told('instrument: b<|>anjo')[0], 'banjo: 5 strings, usually tuned G4 D3 G3 B3 D4');
  });

  // Pounds: published unit weights at 25.5 in, strings-and-frets.md §2.5; 53 % and the first share from §2.3.
  it('gauges and scale length by string, the change first, the whole set last', () => {
    const lines = hoverLines('scale length: 25.5 in\ngauges: 46w<|> 36w 26w 17 13 10');
    assert.deepEqual(lines.slice(0, 3), [
      '46w 36w 26w 17 13 10 for E2 A2 D3 G3 B3 E4',
      '- String 1, E4: as usual, 72.1 N (16.2 lb), 53 % of its strength, 10 (0.25 mm)',
      '- String 2, B3: as usual, 68.4 N (15.4 lb), 31 % of its strength, 13 (0.33 mm)',
    ]);
    assert.equal(lines[6], '- String 6, E2: as usual, 77.8 N (17.5 lb), 46w (1.17 mm)');
    assert.match(lines[7] ?? '', /^The whole set: as usual, 460\.\d N \(103\.6 lb\)/);
    const lowered = hoverLines('tuning: drop B\nscale length: 25.5<|> in').join('\n');
    assert.match(lowered, /String 6, B1: 44 % less/);
    assert.match(lowered, /60w pulls about as usual/);
    assert.match(lowered, /Tune slowly.*string maker’s figures/);
  });

  it('of an instrument without a usual set says the length alone', () => {
    assert.deepEqual(hoverLines('instrument: lap steel\nscale length: 572<|> mm'), [
      '572 mm (22.52 in) from nut to saddle',
    ]);
  });

  it('a value that was not understood says why; one that is overruled says so', () => {
    assert.match(hoverLines('tuning: blo<|>rp').join(' '), /^Tuning was not understood “blorp” is no tuning/);
    assert.deepEqual(hoverLines('capo: <|>2\ncapo: 3'), ['Capo is written again below; that one holds']);
  });

  it('says nothing of prose, blank lines and free text', () => {
    for (const text of ['<|>', 'Let ev<|>ery string ring.', 'title: Wax <|>and Salt', '# a <|>comment']) {
      const { document, place } = openAt(text);
      assert.equal(service.hover(document, place, settings), undefined);
    }
  });

  it('the words of the user are no Markdown', () => {
    const { document, place } = openAt('[Ver*se* <b> `x`<|>]');
    assert.equal(
      service.hover(document, place, settings)?.markdown,
      '**Ver\\*se\\* \\<b\\> \\`x\\`**: a heading for all parts below it',
    );
  });
});
