import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import type { Diagnostic } from '../../../src/checks/check';
import { CHECKS } from '../../../src/checks/checks';
import { Document } from '../../../src/notation/document';
import { applyMend } from './apply';
import { SETTINGS } from './marked';

const check = (text: string): readonly Diagnostic[] => checkDocument(new Document(text), SETTINGS);

describe('every check, by its own examples', () => {
  it('has a code of its own in kebab case', () => {
    const codes = CHECKS.map(({ code }) => code);
    assert.equal(new Set(codes).size, codes.length);
    for (const code of codes) assert.match(code, /^[a-z]+(?:-[a-z]+)*$/);
  });

  for (const { code, examples } of CHECKS) {
    describe(code, () => {
      it('has three texts that raise it and three near ones that do not', () => {
        assert.ok(examples.raises.length >= 3 && examples.quiet.length >= 3);
      });
      for (const text of examples.raises) {
        it(`is raised by ${JSON.stringify(text)}`, () => {
          const found = check(text).filter((item) => item.code === code);
          assert.ok(found.length > 0, JSON.stringify(check(text)));
          const lines = text.split('\n');
          for (const { range, message } of found) {
            const line = lines[range.start.line] ?? '';
            assert.equal(range.end.line, range.start.line);
            assert.ok(range.start.character < range.end.character, 'the range is not empty');
            assert.ok(range.end.character <= line.length, 'the range lies on its line');
            assert.match(message, /^[^\p{Ll}\s].*[.?]$/su);
            assert.ok(!message.includes('undefined') && !message.includes('NaN'), message);
          }
        });
        it(`tells nothing else that is an error there, ${JSON.stringify(text)}`, () => {
          const others = check(text).filter((item) => item.code !== code && item.severity === 'error');
          assert.deepEqual(others, []);
        });
        it(`is mended by each of its mends, ${JSON.stringify(text)}`, () => {
          const found = check(text).filter((item) => item.code === code);
          const [first] = found;
          for (const mend of first?.mends ?? []) {
            const mended = applyMend(text, mend);
            assert.notEqual(mended, text);
            const left = check(mended).filter((item) => item.code === code);
            assert.ok(left.length < found.length, `${mend.title}: ${mended}`);
          }
        });
      }
      for (const text of examples.quiet) {
        it(`is not raised by ${JSON.stringify(text)}`, () => {
          assert.deepEqual(
            check(text).filter((item) => item.code === code),
            [],
          );
        });
      }
    });
  }
});
