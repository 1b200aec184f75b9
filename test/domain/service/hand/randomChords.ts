import fc from 'fast-check';

/*
 * Strummed and plucked chords as a player writes them: two to six notes at once within four frets or open, in two bars,
 * in tunings of the trade, with a chord now and then held by techniques.
 */

const TUNINGS: readonly (readonly [string, readonly string[]])[] = [
  ['standard', ['E4', 'B3', 'G3', 'D3', 'A2', 'E2']],
  ['DADGAD', ['D4', 'A3', 'G3', 'D3', 'A2', 'D2']],
  ['open G', ['D4', 'B3', 'G3', 'D3', 'G2', 'D2']],
];

const moment = fc.record({
  position: fc.integer({ min: 1, max: 5 }),
  strings: fc.array(fc.option(fc.integer({ min: -2, max: 3 }), { nil: undefined, freq: 4 }), {
    minLength: 6,
    maxLength: 6,
  }),
});

/** A document of one system. */
export const randomChords: fc.Arbitrary<string> = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS),
    key: fc.constantFrom('C', 'G', 'D minor', 'E minor'),
    moments: fc.array(moment, { minLength: 2, maxLength: 8 }),
    capo: fc.constantFrom('', '', 'capo: 2\n'),
  })
  .map(({ tuning: [name, labels], key, moments, capo }) => {
    const cells = Array.from({ length: 8 }, (_, i) => moments[i]);
    const lines = labels.map((label, string) => {
      const texts = cells.map((one) => {
        const at = one?.strings[string];
        const fret = at === undefined ? '' : at < 0 ? '0' : String((one?.position ?? 1) + at);
        return fret.padEnd(4, '-');
      });
      return `${label} |${texts.slice(0, 4).join('')}|${texts.slice(4).join('')}|`;
    });
    return `tuning: ${name}\nkey: ${key}\nmeter: 4/4\n${capo}\n${lines.join('\n')}\n`;
  });
