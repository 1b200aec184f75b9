import assert from 'node:assert/strict';
import type { Hover } from 'vscode-languageserver/node';
import type { GripAnswer } from '../../src/service/grip/gripAnswer';
import { TestClient } from './testClient';

const URI = 'file:///grip.pegbox';
const TEXT = 'E4 |0---|\nB3 |1---|\nG3 |0---|\nD3 |2---|\nA2 |3---|\nE2 |----|\n';
const FRET = { line: 1, character: 4 };
const PICTURE = /\n\n!\[Grip: [^\]]+\]\(data:image\/svg\+xml,[^\s()<>"]{100,2000}\)\n\n\*\*Grip\*\*: Index/;

describe('the grip of a column', () => {
  const valueOf = async (pictures: boolean): Promise<string> => {
    const client = await TestClient.start({ initializationOptions: { pictures } });
    await client.opened(URI, TEXT);
    const params = { textDocument: { uri: URI }, position: FRET };
    const { contents } = await client.request<Hover>('textDocument/hover', params);
    assert.equal(await client.stop(), 0);
    assert.ok(typeof contents === 'object' && 'kind' in contents);
    return contents.value;
  };

  it('stands in the hover as a picture for clients that show pictures', async () =>
    assert.match(await valueOf(true), PICTURE));

  it('has words only for the others, whose reader would see the address', async () => {
    const value = await valueOf(false);
    assert.match(value, /\*\*Grip\*\*: Index at fret 1 on string 2/);
    assert.ok(!value.includes('data:'));
  });

  it('is answered by itself; null where nothing is held or the document is not open', async () => {
    const client = await TestClient.start();
    await client.opened(URI, TEXT);
    const ask = (uri: string, position: object): Promise<GripAnswer | null> =>
      client.request('pegbox/grip', { uri, position });
    assert.match((await ask(URI, FRET))?.words ?? '', /^Index at fret 1/);
    assert.equal(await ask(URI, { line: 99, character: 0 }), null);
    assert.equal(await ask('file:///unknown.pegbox', FRET), null);
    assert.equal(await client.stop(), 0);
  });
});
