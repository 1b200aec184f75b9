import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { gripPicture, PICTURE_COLOURS } from '../../../src/service/grip/gripPicture';
import type { GripAnswer } from '../../../src/service/grip/gripAnswer';
import { svgDataUri } from '../../../src/service/grip/dataUri';
import { openAt, service, settings } from './cursor';
import { assertWellFormed } from './wellFormed';

/** The grip of one column: frets by string, the highest number first, apart by spaces; `-` for a string left out. */
function gripOf(header: string, shape: string, own = settings): GripAnswer {
  const frets = shape.split(' ');
  const lines = frets.map((fret, i) => `${frets.length - i} |${fret}---|`).reverse();
  const { document, place } = openAt(`${header}\n\nmark |<|>.\n${lines.join('\n')}\n`, own);
  const answer = service.grip(document, place, own);
  if (!answer) throw new Error(`No grip is told of ${shape}.`);
  return answer;
}

/** The fingers, the highest string number first: `x` silent, `0` open. */
function fingersOf({ strings }: GripAnswer): string {
  return strings.map(({ state, finger }) => (state === 'silent' ? 'x' : String(finger ?? '?'))).join('');
}

/** check-values.md T7: the shapes of first position. */
const T7 = [
  '- 3 2 0 1 0', '- 0 2 2 2 0', '3 2 0 0 0 3', '0 2 2 1 0 0', '- - 0 2 3 2', '- 0 2 2 1 0', '0 2 2 0 0 0',
  '- - 0 2 3 1', '1 3 3 2 1 1', '- 2 1 2 0 2', '3 2 0 0 0 1', '0 2 0 1 0 0', '- 3 2 3 1 0',
]; // prettier-ignore

/** E minor, where chords-db has 2 and 3: it keeps the index in first position (hand-model.md §1.5). */
const OTHERS_DIFFER = '0 2 2 0 0 0';

interface Position {
  readonly frets: readonly number[];
  readonly fingers: readonly number[];
  readonly baseFret: number;
}

/** The fingers that chords-db 0.5.1 has for a shape, 0 for none. */
function fingersInData(shape: string): readonly string[] {
  const file = require.resolve('@tombatossals/chords-db/lib/guitar.json');
  const { chords } = JSON.parse(readFileSync(file, 'utf8')) as {
    readonly chords: Readonly<Record<string, readonly { readonly positions: readonly Position[] }[]>>;
  };
  return Object.values(chords)
    .flat()
    .flatMap(({ positions }) => positions)
    .filter(({ frets, baseFret }) => {
      const written = frets.map((fret) => (fret < 0 ? '-' : fret === 0 ? '0' : String(fret + baseFret - 1)));
      return written.join(' ') === shape;
    })
    .map(({ fingers }) => fingers.join(''));
}

describe('the grip of a column', () => {
  for (const shape of T7)
    it(`T7: ${shape} takes the fingers that chords-db has`, () => {
      const theirs = fingersInData(shape);
      assert.ok(theirs.length > 0, 'the data has the shape');
      const ours = fingersOf(gripOf('', shape)).replaceAll('x', '0');
      assert.equal(theirs.includes(ours), shape !== OTHERS_DIFFER, `${ours}; theirs: ${theirs.join(', ')}`);
    });

  it('T8–T10: every shape can be held, each in its own tuning', () => {
    const shapes: readonly [tuning: string, shapes: readonly string[]][] = [
      ['open G', ['2 0 2 0 1 2', '2 0 2 0 0 2', '- 2 2 2 1 2', '0 0 0 0 0 3', '0 2 0 2 1 0']],
      ['DADGAD', ['0 0 0 2 0 0', '5 2 0 0 2 0', '2 2 2 0 0 0', '- 0 2 0 0 0', '- 0 2 2 0 2']],
      ['open D', ['- 2 0 1 2 0', '2 2 2 1 2 2', '- 0 2 1 0 2']],
    ];
    for (const [tuning, list] of shapes) {
      for (const shape of list) {
        const answer = gripOf(`tuning: ${tuning}`, shape);
        assert.deepEqual(answer.refused, [], `${tuning} ${shape}`);
        const stopped = answer.strings.filter(({ state }) => state === 'stopped');
        assert.ok(
          stopped.every(({ finger }) => finger !== null && finger !== 0),
          shape,
        );
      }
    }
    assert.equal(fingersOf(gripOf('tuning: open G', '2 0 2 0 1 2')), '203014');
    assert.equal(fingersOf(gripOf('tuning: DADGAD', '0 0 0 2 0 0')), '000100');
  });

  it('says it in words: barres, open strings, millimetres', () => {
    const { words, basis, position, barres } = gripOf('', '1 3 3 2 1 1');
    assert.equal(
      words,
      'Index at fret 1, barre over strings 1–6; middle at fret 2 on string 3; ring at fret 3 on string 5; little finger at fret 3 on string 4. Frets 1 to 3 span 67 mm.',
    );
    assert.equal(basis, "The fingers of least effort under the hand's table, for these notes alone");
    assert.equal(position, 1);
    assert.deepEqual(barres, [{ finger: 1, fret: 1, from: 6, to: 1 }]);
    assert.match(gripOf('', '- 3 2 0 1 0').words, /Open: strings 1 and 3\./);
    assert.equal(gripOf('', '0 0 0 0 0 0').words, 'All open, no finger is needed.');
    assert.equal(gripOf('', '- - 3 - - -').words, 'Index at fret 3 on string 4.');
  });

  it('says by what rule a grip is impossible, with the figures', () => {
    // hand-model.md §0: frets 1 to 6 are 153.4 mm at 648 mm
    const far = gripOf('', '- 1 - - 6 -');
    assert.deepEqual(far.refused, ['strings 5 and 2, frets 1 and 6: 153 mm, the limit is 130']);
    assert.equal(far.words, `Cannot be held: ${far.refused[0] ?? ''}.`);
    assert.deepEqual([far.position, far.millimetres, far.basis], [null, null, '']);
    assert.match(gripOf('', '1 2 3 4 5 5').refused.join(), /4 fingers/);
    assert.deepEqual(gripOf('scale length: 381 mm', '- 1 - - 6 -').refused, []);
    const wider = { ...settings, reach: 170 };
    assert.deepEqual(gripOf('', '- 1 - - 6 -', wider).refused, []);
  });

  it('the thumb takes the sixth string where the setting allows it', () => {
    const shape = '2 - 0 2 3 2';
    assert.equal(fingersOf(gripOf('', shape, { ...settings, thumb: true })).includes('T'), true);
    assert.equal(fingersOf(gripOf('', shape)).includes('T'), false);
  });

  it('more strings than it can reckon with are refused, not waited for', () => {
    const tuning = 'tuning: C2 F2 A2 C3 D3 E3 F3 G3 A3 B3 C4 E4';
    // Reckoned with, they would take longer than any test may.
    const answer = gripOf(tuning, Array.from({ length: 12 }, () => '5').join(' '));
    assert.match(answer.refused[0] ?? '', /12 strings are stopped at once/);
  });

  it('slide: where the bar lies, and what no straight bar gives', () => {
    const straight = gripOf('tuning: open G\nfretting: slide', '- 5 5 5 5 5');
    assert.equal(straight.words, 'The bar lies at fret 5 over strings 1–5.');
    assert.deepEqual(straight.bar, { fret: 5, from: 5, to: 1 });
    assert.equal(fingersOf(straight), 'x?????');
    const bent = gripOf('fretting: slide', '- - 7 7 5 0');
    assert.deepEqual(bent.refused, ['string 2, fret 5 (the bar lies at fret 7)']);
    assert.equal(
      bent.words,
      'The bar lies at fret 7 over strings 3–4. No straight bar gives string 2, fret 5 (the bar lies at fret 7). Open: string 1.',
    );
    assert.deepEqual(gripOf('fretting: slide', '- - 7 0 7 -').refused, [
      'string 3, open (the bar covers strings 2–4)',
    ]);
  });

  it('a partial capo: its own fret is the open string, others count from the nut', () => {
    const answer = gripOf('capo: 2 on 5 4 3', '0 2 4 4 0 0');
    assert.equal(answer.strings.find(({ string }) => string === 5)?.state, 'open');
    assert.match(answer.words, /fret 4 on string 4; .* fret 4 on string 3\. Open: strings 1, 2, 5 and 6\./);
    assert.match(answer.alt, /Partial capo: 2 on 5 4 3/);
  });

  it('a full capo: frets and position are as written', () => {
    const answer = gripOf('capo: 3', '- 0 2 2 1 0');
    assert.equal(answer.position, 1);
    assert.match(answer.words, /^Index at fret 1 on string 2;/);
    assert.match(answer.alt, /Frets count from the capo at fret 3/);
  });

  it('a course is one string under the hand; a short string counts from the nut', () => {
    assert.equal(fingersOf(gripOf('instrument: 12-string guitar', '- 3 2 0 1 0')), 'x32010');
    const banjo = gripOf('instrument: banjo', '0 2 0 1 2');
    assert.equal(banjo.strings[0]?.state, 'open');
    assert.equal(gripOf('instrument: banjo', '7 - - - 7').position, 7);
  });

  it('what rings is held where the hand can, and let go where it cannot', () => {
    const text = `E4 |--------|12-|
B3 |----<|>1---|---|
G3 |--------|---|
D3 |--2-----|---|
A2 |3-------|---|
E2 |--------|---|
`;
    const { document, place } = openAt(text);
    const held = service.grip(document, place, settings);
    assert.equal(held && fingersOf(held), 'x32x1x');
    assert.match(held?.words ?? '', /Held from before: strings 4 and 5\./);
    const later = service.grip(document, { line: 0, character: 13 }, settings);
    assert.ok(later);
    assert.deepEqual(later.letGo, [5, 4, 2]);
    assert.match(
      later.words,
      /^Index at fret 12 on string 1\. What rings on strings 2, 4 and 5 has to be let go\.$/,
    );
  });

  it('the other hand taps, a harmonic is touched, a stroke is muted', () => {
    const text = (body: string): string =>
      `1 |t12-|\n2 |${body}---|\n3 |x---|\n4 |<|>2---|\n5 |<12>|\n6 |3---|\n`;
    const { document, place } = openAt(text('-'));
    const answer = service.grip(document, place, settings);
    assert.ok(answer);
    assert.deepEqual(answer.strings.map(({ state }) => state), [
      'stopped', 'touched', 'stopped', 'muted', 'silent', 'tapped',
    ]); // prettier-ignore
    assert.match(answer.words, /Fret 12 on string 1 is tapped by the other hand\. String 5 is touched at 12/);
  });

  it('is undefined where nothing is held, and outside systems', () => {
    for (const text of ['ti<|>tle: Gate\n', 'E4 |<|>--x-|\n', 'G|x<|>---|\n', '\n<|>\n']) {
      const { document, place } = openAt(text);
      assert.equal(service.grip(document, place, settings), undefined, text);
    }
  });
});

describe('the hover of a grip', () => {
  const hoverOf = (text: string): ReturnType<typeof service.hover> => {
    const { document, place } = openAt(text);
    return service.hover(document, place, settings);
  };

  it('has words and a picture for two stopped strings, neither for one', () => {
    const two = hoverOf('2 |<|>1---|\n1 |2---|\n'.split('\n').reverse().join('\n').trim() + '\n');
    assert.match(
      two?.markdown ?? '',
      /\*\*Grip\*\*: Index at fret 1 on string 2; middle at fret 2 on string 1/,
    );
    assert.ok(
      two?.picture && two.picture.at > 0 && two.markdown.slice(two.picture.at).startsWith('\n\n**Grip**'),
    );
    const one = hoverOf('1 |<|>2---|\n2 |0---|\n');
    assert.ok(one && !one.picture && !one.markdown.includes('Grip'));
  });

  it('says what no hand can hold, without a word of least effort', () => {
    const { markdown = '' } = hoverOf('2 |<|>6---|\n3 |----|\n4 |----|\n5 |1---|\n') ?? {};
    assert.match(
      markdown,
      /\*\*Grip\*\*: Cannot be held: strings 5 and 2, frets 1 and 6: 153 mm, the limit is 130\./,
    );
    assert.ok(!markdown.includes('least effort'));
  });
});

describe('the picture of a grip', () => {
  const cases: readonly [header: string, shape: string][] = [
    ['', '- 3 2 0 1 0'],
    ['', '1 3 3 2 1 1'],
    ['', '10 12 12 11 10 10'],
    ['', '6 - - - - 17'],
    ['capo: 2 on 5 4 3', '0 2 4 4 0 0'],
    ['instrument: 12-string guitar', '- 3 2 0 1 0'],
    ['instrument: banjo', '7 5 5 6 7'],
    ['instrument: lap steel\ntuning: C2 F2 A2 C3 D3 E3 F3 G3 A3 B3', '5 5 5 5 5 5 5 5 5 5'],
    ['fretting: slide', '- - 7 7 5 0'],
    ['title: <b>&"\' (Gate)', '- 3 2 0 <12> 0'],
  ];
  for (const [header, shape] of cases) {
    it(`is a small well-formed SVG with role, title and no script: ${header.replaceAll('\n', ', ')} ${shape}`, () => {
      const { svg, alt } = gripOf(header, shape);
      assertWellFormed(svg);
      assert.match(svg, /^<svg xmlns='http:\/\/www\.w3\.org\/2000\/svg' role='img'/);
      assert.match(svg, /<title>Grip: [^<]+<\/title>/);
      assert.ok(!/script|href|style=|on[a-z]+=|url\(|NaN|undefined|Infinity/.test(svg), svg);
      const uri = svgDataUri(svg);
      // editor-limits.md V9: a data address that is too long prints as text
      assert.ok(uri.length <= 2000, `${uri.length} characters`);
      assert.match(uri, /^[!-~]+$/);
      assert.ok(!/[()<>"\s\\]/.test(uri));
      assert.equal(decodeURIComponent(uri.slice(uri.indexOf(',') + 1)), svg);
      assert.ok(alt.length > 10);
    });
  }

  it('is readable on light and dark grounds (WCAG 2.2, 1.4.3 and 1.4.11)', () => {
    const { dot, line, digit } = PICTURE_COLOURS;
    assert.ok(contrast(dot, digit) >= 4.5, 'digits on dots');
    // Grounds: white, and the dark ones of editors up to a medium dark grey.
    for (const ground of ['#fff', '#f3f3f3', '#1f1f1f', '#252526', '#000']) {
      for (const colour of [dot, line]) assert.ok(contrast(colour, ground) >= 3, `${colour} on ${ground}`);
    }
  });

  it('draws a dot for each stopped string, a mark for each open or silent one', () => {
    const string = (number: number, fret: number | undefined): Parameters<typeof gripPicture>[0]['strings'][number] => ({
      string: number, course: false, start: 0, mark: fret === undefined ? 'open' : undefined, fret, finger: 1,
    }); // prettier-ignore
    const base = { barres: [], bar: undefined, capo: undefined, title: 'Two & more <' };
    const svg = gripPicture({ ...base, strings: [string(3, 1), string(2, undefined), string(1, 2)] });
    assert.equal(svg.match(/<circle/g)?.length, 2);
    assert.equal(svg.match(/a5 5/g)?.length, 1);
    assert.match(svg, /<title>Two &amp; more &lt;<\/title>/);
  });
});

/** Contrast ratio of two colours, WCAG 2.2 (relative luminance of sRGB). */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const hex =
    colour.length === 4 ? [...colour.slice(1)].map((digit) => digit + digit).join('') : colour.slice(1);
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
