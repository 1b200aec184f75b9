import fc from 'fast-check';
import { randomTab } from '../../support/randomTab';

/* Documents of several systems at random: sections, parts, prose, comments, fields that change on the way. */

const BETWEEN = [
  '',
  '[Verse]',
  '[Chorus] x2',
  'Let it ring over the water.',
  '# softly',
  '[Verse]\nOnce more.',
];
const KEYS = ['', 'key: D', 'key: Em', 'key:   A mixolydian'];
const CAPOS = ['', 'capo: 2', 'capo: none', 'capo: 2 on 4 3'];
const PARTS = ['', '', 'part: low', 'part: high', 'part: low'];

const block = fc.record({
  between: fc.constantFrom(...BETWEEN),
  key: fc.constantFrom(...KEYS),
  capo: fc.constantFrom(...CAPOS),
  part: fc.constantFrom(...PARTS),
  tab: randomTab,
  /** Whether the fields of the system before still hold. */
  goesOn: fc.boolean(),
});

/** A document of up to four systems. */
export const randomSong: fc.Arbitrary<string> = fc
  .record({ title: fc.boolean(), blocks: fc.array(block, { minLength: 1, maxLength: 4 }) })
  .map(({ title, blocks }) => {
    let fields = '';
    const written = blocks.map(({ between, key, capo, part, tab, goesOn }, i) => {
      const [own = '', ...rest] = tab.split('\n\n');
      const same = own === fields;
      const head = goesOn && same && i > 0 && part === '' ? [] : [own, capo, key];
      fields = own;
      return [between, [part, ...head].filter((line) => line !== '').join('\n'), rest.join('\n\n').trimEnd()]
        .filter((text) => text !== '')
        .join('\n\n');
    });
    return `${title ? 'title: Low Water\n' : ''}${written.join('\n\n')}\n`;
  });

/** Where a selection begins and ends, as shares of the document's lines, and characters in them. */
export const randomSelection = fc.option(
  fc.record({
    from: fc.nat(999),
    to: fc.nat(999),
    fromCharacter: fc.nat(60),
    toCharacter: fc.nat(60),
  }),
  { nil: undefined, freq: 3 },
);
