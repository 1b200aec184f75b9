import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { ErrorCodes, ResponseError, TextDocumentSyncKind } from 'vscode-languageserver/node';
import { SERVER, TestClient } from './testClient';
import { LANTERN } from './texts';

// Source of the exit codes and error codes: Language Server Protocol 3.17, "Exit Notification" and "Base Protocol".
describe('the server comes and goes', () => {
  it('says what it offers, with UTF-16 places and changes by range', async () => {
    const client = await TestClient.start();
    assert.ok(client.result);
    const { capabilities, serverInfo } = client.result;
    assert.equal(serverInfo?.name, 'Pegbox');
    assert.equal(capabilities.positionEncoding, 'utf-16');
    assert.deepEqual(capabilities.textDocumentSync, {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
    });
    assert.equal(capabilities.hoverProvider, true);
    assert.equal(await client.stop(), 0);
  });

  it('exits with 1 when no shutdown came before the exit', async () => {
    const client = await TestClient.start();
    await client.notify('exit', null);
    assert.equal(await client.exitCode, 1);
    client.connection.dispose();
  });

  it('does not stay behind when its input ends', async () => {
    const client = await TestClient.start();
    client.child.stdin?.end();
    assert.equal(await client.exitCode, 1);
    client.connection.dispose();
  });

  it('answers an unknown request with the error for it', async () => {
    const client = await TestClient.start();
    await assert.rejects(client.request('pegbox/nothing', {}), (error: unknown) => {
      assert.ok(error instanceof ResponseError);
      assert.equal(error.code, ErrorCodes.MethodNotFound);
      return true;
    });
    assert.equal(await client.stop(), 0);
  });

  it('answers a hover that came right behind the opening, while it was still loading', async () => {
    const client = TestClient.spawn();
    const initialized = client.request('initialize', { processId: null, rootUri: null, capabilities: {} });
    await client.notify('initialized', {});
    await client.open('file:///early.pegbox', LANTERN);
    const symbols = client.request<unknown[]>('textDocument/documentSymbol', {
      textDocument: { uri: 'file:///early.pegbox' },
    });
    await initialized;
    assert.notEqual((await symbols).length, 0);
    assert.equal(await client.stop(), 0);
  });

  it('says how it is started when started alone', () => {
    const alone = spawnSync(process.execPath, [SERVER], { encoding: 'utf8' });
    assert.equal(alone.status, 2);
    assert.match(alone.stderr, /--stdio/);
    assert.equal(alone.stdout, '');
  });
});
