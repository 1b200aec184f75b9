import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'chai';
import { Document } from '../../../../src/notation/document';
import type { TypedKey } from '../../../../src/service/typing/typedKey';
import { typeOver } from '../../../../src/service/typing/typeOver';

/*
 * The plain model of test/keys and what the service does, key by key on the same text. The real editors are held to the
 * same model with real keys (src/tools/keysRun.mjs).
 */

const TEXT = readFileSync(path.join(__dirname, '../../../keys/workspace/harbour.pegbox'), 'utf8');

describe('typing over the staff and the plain model', () => {
  for (let seed = 1; seed <= 5; seed++) {
    it(`agree on 1,000 keys of seed ${seed}`, async () => {
      const { PlainModel, nextKey, random } = await import('../../../keys/plainModel.mjs');
      const model = new PlainModel(TEXT, 6, 7);
      const next = random(seed);
      for (let i = 0; i < 1000; i++) {
        const key = nextKey(model, next);
        const before = new Document(model.text);
        const place = { line: model.line, character: model.character };
        model.press(key);
        const typed = keyOf(key);
        const done = typed && typeOver(before, [{ anchor: place, active: place }], typed);
        if (done?.kind !== 'staff') continue;
        before.edit([...done.edits].reverse());
        expect(before.text(), `key ${i}, ${key}: ${done.notice ?? ''}`).to.equal(model.text);
        expect(done.cursors[0]?.active).to.deep.equal({ line: model.line, character: model.character });
      }
    });
  }
});

function keyOf(key: string): TypedKey | undefined {
  if (key === 'Backspace') return 'backspace';
  if (key === 'Delete') return 'delete';
  return key.length === 1 ? { text: key } : undefined;
}
