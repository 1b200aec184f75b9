import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { CHECKS } from '../../../src/checks/checks';
import { helpPage } from '../../../src/checks/helpPage';

const shipped = readFileSync(resolve(__dirname, '../../../media/help.md'), 'utf8');

describe('the help page', () => {
  it('is what the checks say (node src/tools/help.mjs writes it anew)', () => {
    assert.equal(shipped, helpPage());
  });

  for (const { code } of CHECKS) {
    it(`has a heading for ${code}, which is its anchor`, () => {
      assert.equal(shipped.split('\n').filter((line) => line === `### ${code}`).length, 1);
    });
  }
});
