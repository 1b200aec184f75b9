import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'chai';

/** A key bound in package.json. */
interface Bound {
  readonly key: string;
  readonly when: string;
}

const ROOT = path.join(__dirname, '../../..');

describe('the keys of typing over the staff', () => {
  const read = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as {
    readonly contributes: { readonly keybindings: readonly Bound[] };
  };
  const { keybindings } = read.contributes;

  it('are bound once each', () => {
    const keys = keybindings.map(({ key }) => key);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).to.deep.equal([]);
  });

  it('keep out of every other text and of what else takes keys', () => {
    const keepsOut = [
      'editorLangId == pegbox',
      'editorTextFocus',
      'config.pegbox.typeOverStaff',
      '!editorReadonly',
      '!isComposing',
      '!suggestWidgetVisible',
      '!renameInputVisible',
      '!inSnippetMode',
    ];
    for (const { key, when } of keybindings) expect(when.split(' && '), key).to.include.members(keepsOut);
  });

  it('have every digit, on both blocks, whatever the cursor is known to be at', () => {
    for (const digit of '0123456789') {
      for (const key of [digit, `numpad${digit}`])
        expect(keybindings.find((one) => one.key === key)?.when, key).not.to.match(/pegbox\.typing/);
    }
  });
});
