import { assert } from 'chai';
import * as vscode from 'vscode';
import { expected } from '../expectedHost';

describe('the host', () => {
  it('is the one these tests were made for', () => {
    // a web worker has importScripts; Node has a version of itself
    const here =
      'importScripts' in globalThis ? 'web' : globalThis.process.versions.node ? 'node' : 'neither';
    assert.strictEqual(here, expected.host);
    if (expected.host === 'web') assert.strictEqual(vscode.env.uiKind, vscode.UIKind.Web);
  });

  it('runs Pegbox itself, not only its tests', async () => {
    const pegbox = vscode.extensions.getExtension('pegbox.pegbox'); // knows the extensions of this host only
    assert.isDefined(pegbox, 'Pegbox is not in this extension host');
    await pegbox.activate();
    assert.strictEqual(pegbox.isActive, true);
  });
});
