import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatTuningNotes } from '../../../../src/instrument/tuningFormat';
import { everydayChords } from '../../../../src/service/sheet/handout/everydayChords';
import { handoutContent } from '../../../../src/service/sheet/handout/handoutContent';
import { handoutSvg } from '../../../../src/service/sheet/handout/handoutSvg';
import type { HandoutAnswer, SheetRequest } from '../../../../src/service/sheet/sheetAnswer';
import { randomTuning } from '../../instrument/randomTuning';
import { service, settings } from '../cursor';
import { assertWellFormed } from '../wellFormed';
import { sheetOf } from './ask';

function handoutOf(text: string, request: SheetRequest = {}): HandoutAnswer {
  const document = service.open(text, settings);
  const place = { line: document.lineCount - 1, character: 0 };
  const answer = service.tuningHandout(document, place, request, settings);
  assert.ok(!('error' in answer), 'error' in answer ? answer.error : '');
  return answer;
}

/** Where texts stand: left end (or middle) and foot, millimetres. */
function texts(svg: string): readonly { x: number; y: number; size: number; text: string }[] {
  // Those of the page, not those within the pictures of shapes, which have measures of their own.
  const page = svg.replace(/<svg x=.*?<\/svg>/gs, '');
  return [...page.matchAll(/<text x='([\d.]+)' y='([\d.]+)' font-size='([\d.]+)'[^>]*>([^<]*)</g)].map(
    ([, x, y, size, text = '']) => ({ x: Number(x), y: Number(y), size: Number(size), text }),
  );
}

/** A page holds everything within its margins, and no line stands on another. */
function assertLaidOut(svg: string): void {
  assertWellFormed(svg);
  const all = texts(svg);
  assert.ok(all.length > 40);
  for (const { x, y, text } of all)
    assert.ok(x >= 13.9 && x < 196 && y > 14 && y <= 284, `${text} at ${x}, ${y}`);
  for (const [at, one] of all.entries())
    for (const other of all.slice(at + 1))
      if (one.x === other.x) {
        const [upper, lower] = one.y < other.y ? [one, other] : [other, one];
        assert.ok(lower.y - upper.y > lower.size * 0.9, `${upper.text} on ${lower.text}`);
      }
}

describe('The handout', () => {
  it('is one page: A4 portrait, a title, a description, black on white, real text, nothing from elsewhere', () => {
    const { svg, title, fileName } = handoutOf('tuning: DGDF#BD\nkey: G');
    assertLaidOut(svg);
    assert.match(
      svg,
      /^<svg xmlns='http:\/\/www\.w3\.org\/2000\/svg' width='210mm' height='297mm' viewBox='0 0 210 297'/,
    );
    assert.ok(svg.includes(`<title>${title}</title><desc>One page about`));
    const colours = new Set([...svg.matchAll(/#[0-9a-f]{3,6}(?=')/g)].map(([colour]) => colour));
    assert.deepEqual([...colours].sort(), ['#000', '#fff']);
    assert.doesNotMatch(svg, /href|<script|<style|<image|url\(/);
    assert.equal(fileName, 'DGDF-sharp-BD-on-the-guitar');
  });

  it('holds notes, retuning with cautions, barres, the frets of the scale and six shapes, as picture and as text', () => {
    const { svg, text } = handoutOf('tuning: open E\nkey: E');
    for (const part of [
      'E2 B2 E3 G#3 B3 E4',
      'Retuning from standard',
      'Caution',
      'Straight barres',
      'the four chord',
      'Scale of E major',
      '0 2 4 5 7 9 11 12 on strings 6, 4 and 1',
      'Six shapes in E major',
      'C#m',
    ]) {
      assert.ok(svg.includes(part), `the picture lacks ${part}`);
      assert.ok(text.includes(part), `the text lacks ${part}`);
    }
    assert.match(text.replace(/\s+/g, ' '), /keep your eyes and face away from the strings.*luthier/);
    assert.equal([...svg.matchAll(/<svg x=/g)].length, 6);
    for (const line of text.split('\n')) assert.ok(line.length <= 78, line);
  });

  it('the six chords are those of the key that are not diminished (common practice, no source)', () => {
    const chords = (header: string): string =>
      everydayChords(service.open(header, settings).headerAt(9)).chords.join(' ');
    assert.equal(chords('key: G'), 'G Am Bm C D Em');
    assert.equal(chords('key: E minor'), 'Em G Am Bm C D');
    assert.equal(chords('key: D mixolydian'), 'D Em G Am Bm C');
    assert.equal(chords('tuning: open D'), 'D Em F#m G A Bm');
    assert.equal(chords('tuning: open D minor'), 'Dm F Gm Am Bb C');
  });

  it('has room for long names, courses, eight strings and every caution', () => {
    for (const text of [
      'instrument: 12-string guitar\ntuning: Eb2-14c/Eb3-14c Ab2/Ab3 Db3/Db4 Gb3-14c/Gb4-14c Bb3/Bb3 Eb4/Eb4\nkey: Ab minor\ncapo: 2',
      'instrument: eight-string guitar\ntuning: G#1 C#2 F#2 B2 E3 A3 C#4 F#4\nkey: C# minor\ncapo: 2 on 5 4 3',
      'instrument: lap steel\ntuning: B11\nkey: Bb minor',
      'instrument: mandolin\ntuning: GDGD',
      'tuning: all fifths\nkey: C',
      'instrument: banjo\ntuning: open D\nkey: D',
    ])
      assertLaidOut(handoutOf(text, { slide: true }).svg);
  });

  it('law: whatever the tuning, everything stands on the page', () => {
    fc.assert(
      fc.property(randomTuning, fc.boolean(), (tuning, key) => {
        const count = tuning.strings.length;
        const instrument = [
          'ukulele',
          'five-string bass',
          'guitar',
          'seven-string guitar',
          'eight-string guitar',
        ][count - 4];
        const text = `instrument: ${instrument ?? ''}\ntuning: ${formatTuningNotes(tuning)}${key ? '\nkey: C# minor' : ''}`;
        const shapes = Array.from({ length: 6 }, () => ({
          chord: 'C#m',
          text: 'x 10 12 11 13 x 10 12',
          svg: undefined,
        }));
        assertLaidOut(
          handoutSvg(handoutContent(sheetOf(text, { slide: true }), { heading: 'Six shapes', shapes })),
        );
      }),
      { numRuns: 30 },
    );
  });
});
