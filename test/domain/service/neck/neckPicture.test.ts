import assert from 'node:assert/strict';
import type { NeckPictureRequest } from '../../../../src/service/neck/neckAnswer';
import { openAt, service, settings } from '../cursor';

function picture(marked: string, request: NeckPictureRequest = {}): string {
  const { document, place } = openAt(marked);
  const answer = service.neckSvg(document, place, request, settings);
  assert.ok(!('error' in answer), JSON.stringify(answer));
  return answer.svg;
}

/** The centres of the labels of one text, in the order drawn. */
function centres(svg: string, label: string): readonly (readonly [number, number])[] {
  const texts = svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" fill="#[0f]+"[^>]*>([^<]*)<\/text>/g);
  return [...texts].flatMap(([, x, y, text]) => (text === label ? [[Number(x), Number(y)] as const] : []));
}

const CASES: readonly (readonly [string, NeckPictureRequest])[] = [
  ['<|>', {}],
  ['tuning: DADGAD\ncapo: 2 on 5 4 3\nkey: D\n<|>', { upright: true }],
  ['instrument: five-string banjo\ntuning: open G\nkey: G\n<|>', { leftHanded: true, labels: 'degrees' }],
  ['instrument: 12-string guitar\ncapo: 3\nkey: G\n<|>', { upright: true, leftHanded: true }],
  ['tuning: F#1 B1 E2 A2 D3 G3 B3 E4\nfrets: 24\n<|>', { chord: 'G/B', labels: 'intervals', every: true }],
  ['instrument: ukulele\n<|>', { frets: 1 }],
];

describe('the picture of a neck', () => {
  for (const [text, request] of CASES)
    it(`is one drawing of its own, and nothing runs off it: ${JSON.stringify([text, request])}`, () => {
      const svg = picture(text, request);
      assert.match(svg, /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" role="img"/);
      assert.match(svg, /<title>[^<]+<\/title><desc>[^<]+<\/desc>/);
      assert.doesNotMatch(svg, /NaN|undefined|Infinity|script|href/);
      const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? [];
      for (const [, x, y] of svg.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)) {
        assert.ok(Number(x) >= 0 && Number(x) <= Number(width), `${x} of ${width}`);
        assert.ok(Number(y) >= 0 && Number(y) <= Number(height), `${y} of ${height}`);
      }
      for (const [, x, y] of svg.matchAll(/<(?:text|rect) x="([-\d.]+)" y="([-\d.]+)"/g)) {
        assert.ok(Number(x) >= 0 && Number(x) <= Number(width), `${x} of ${width}`);
        assert.ok(Number(y) >= 0 && Number(y) <= Number(height), `${y} of ${height}`);
      }
      // every tag that is opened is closed
      const open: string[] = [];
      for (const [, end, name, own] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
        if (end) assert.equal(open.pop(), name);
        else if (!own) open.push(name ?? '');
      }
      assert.deepEqual(open, []);
    });

  it('has frets spaced as on a neck: each cell 2^(-1/12) of the one before', () => {
    // The places of a C string up to its fifth fret.
    const svg = picture('tuning: C3 C3 C3 C3\nfrets: 24\n<|>', { scale: 'C chromatic' });
    const at = (note: string): number => centres(svg, note)[0]?.[0] ?? NaN;
    const notes = ['Db', 'D', 'Eb', 'E', 'F'];
    const steps = notes.slice(1).map((note, index) => at(note) - at(notes[index] ?? ''));
    steps.slice(1).forEach((step, index) => {
      assert.ok(Math.abs(step / (steps[index] ?? NaN) - 2 ** (-1 / 12)) < 0.01, steps.join(' '));
    });
  });

  it('is turned for a left-handed player: the nut at the right, or string 1 at the left', () => {
    const nut = (request: NeckPictureRequest): readonly number[] => {
      const [, x1, y1, x2] =
        /stroke-width="4" d="M([\d.]+) ([\d.]+)L([\d.]+)/.exec(picture('<|>', request)) ?? [];
      return [Number(x1), Number(y1), Number(x2)];
    };
    assert.ok((nut({ leftHanded: true })[0] ?? 0) > (nut({})[0] ?? 0) + 300);
    const [from = 0, , to = 0] = nut({ upright: true });
    assert.ok(from < to, 'from string 6 at the left to string 1');
    const [leftFrom = 0, , leftTo = 0] = nut({ upright: true, leftHanded: true });
    assert.ok(leftFrom > leftTo);
  });

  it('keeps out what a name could carry into it', () => {
    const svg = picture('tuning: <b>&"\nkey: G\n<|>');
    assert.doesNotMatch(svg, /<b>/);
  });
});
