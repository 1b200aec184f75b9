import assert from 'node:assert/strict';
import { createLanguageService } from '../../../src/service/languageService';
import { DEFAULT_SETTINGS } from '../../../src/service/settings';

const staff = ['E4 |0---|', 'B3 |----|', 'G3 |----|', 'D3 |----|', 'A2 |----|', 'E2 |----|'].join('\n');
const verses = `title: Pier

${staff}

[Verse]
${staff}

[Verse]
${staff}

${staff}
`;

const service = createLanguageService();

/** The passage of `there` that answers to a line of `text`, as `title, from–to` counted from 0. */
function answering(text: string, line: number, there: string): string | undefined {
  const [one, other] = [text, there].map((some) => service.open(some, DEFAULT_SETTINGS));
  assert.ok(one && other);
  const passage = service.counterpart(one, { line, character: 3 }, other);
  return passage && `${passage.title}, ${passage.range.start.line}–${passage.range.end.line}`;
}

describe('the section that answers to one of another text', () => {
  // What a change may do: fields above a section, and a system split in two.
  const changed = verses
    .replace('[Verse]\n', '[Verse]\ntuning: DADGAD\ncapo: 2\n\n')
    .replace(`\n\n${staff}\n`, `\n\n${staff}\n\n${staff}\n`);
  const lineOf = (text: string, piece: string, from = 0): number =>
    text.slice(0, text.indexOf(piece, from)).split('\n').length - 1;

  it('is counted, also of two with one name', () => {
    const second = changed.lastIndexOf('[Verse]');
    assert.equal(answering(changed, lineOf(changed, 'E4', second), verses), 'Verse, 18–30');
    assert.equal(
      answering(changed, lineOf(changed, 'E4', changed.indexOf('[Verse]')), verses),
      'Verse, 10–15',
    );
  });
  it('is what stands above the first heading, also where a system was split', () => {
    assert.equal(answering(changed, 10, verses), 'Before the first section, 2–7');
  });
  it('is the section below, at its heading or its fields', () => {
    assert.equal(answering(changed, lineOf(changed, '[Verse]'), verses), 'Verse, 10–15');
    assert.equal(answering(changed, lineOf(changed, 'capo'), verses), 'Verse, 10–15');
  });
  it('is the part where nothing has a heading', () => {
    const parts = `part: low\n\n${staff}\n\npart: high\n\n${staff}\n`;
    assert.equal(answering(`remark: put in\n${parts}`, 14, parts), 'Part high, 11–16');
  });
  it('is the file where there is neither', () => {
    assert.equal(answering(`tuning: DADGAD\n${staff}\n`, 3, `${staff}\n`), 'The whole file, 0–5');
  });
  it('is nothing without a tab', () => {
    assert.equal(answering('title: Pier\n', 0, 'title: Pier\n'), undefined);
  });
});
