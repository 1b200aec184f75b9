import assert from 'node:assert/strict';
import { DiagnosticSeverity, type Diagnostic } from 'vscode-languageserver/node';
import { range, TestClient } from './testClient';
import { BAD_CAPO, LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';

function textOf(diagnostic: Diagnostic | undefined): string {
  return typeof diagnostic?.message === 'string' ? diagnostic.message : '';
}

describe('diagnostics over the wire', () => {
  let client: TestClient;
  beforeEach(async () => {
    client = await TestClient.start({ initializationOptions: { helpLink: 'help:page?{code}' } });
  });
  afterEach(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  it('come when a document opens, with its version, and are empty when nothing is wrong', async () => {
    const first = client.next(URI);
    await client.open(URI, LANTERN);
    assert.deepEqual(await first, { uri: URI, version: 1, diagnostics: [] });
  });

  it('name the place, the code and the link of a mistake', async () => {
    const [found, ...others] = await client.opened(URI, BAD_CAPO);
    assert.ok(found);
    assert.deepEqual(others, []);
    assert.equal(found.source, 'pegbox');
    assert.equal(found.severity, DiagnosticSeverity.Error);
    assert.equal(found.range.start.line, 2);
    assert.match(String(found.code), /^[a-z]+(-[a-z]+)*$/);
    assert.deepEqual(found.codeDescription, { href: `help:page?${found.code}` });
    assert.match(textOf(found), /^[A-Z“].*\.$/s);
  });

  it('go when the mistake is mended, and come back when it is made again', async () => {
    const [found] = await client.opened(URI, BAD_CAPO);
    assert.ok(found);
    const mended = client.next(URI);
    await client.change(URI, { range: range(2, 8, 2, 14), text: '2' });
    assert.deepEqual(await mended, { uri: URI, version: 2, diagnostics: [] });
    const again = client.next(URI);
    await client.change(URI, { range: range(2, 8, 2, 9), text: 'banana' });
    assert.deepEqual(await again, { uri: URI, version: 3, diagnostics: [found] });
  });

  it('move with the lines above them', async () => {
    const [found] = await client.opened(URI, BAD_CAPO);
    assert.ok(found);
    const moved = client.next(URI);
    await client.change(URI, { range: range(0, 0, 0, 0), text: '# a remark\n\n' });
    const [after] = (await moved).diagnostics;
    assert.equal(after?.range.start.line, found.range.start.line + 2);
  });

  it('are not sent again when they are the same', async () => {
    await client.opened(URI, BAD_CAPO);
    // Away from the mistake: the list stays as it is.
    await client.change(URI, { range: range(0, 20, 0, 20), text: '!' });
    // An answer means that the queue before it is done.
    await client.request('textDocument/hover', {
      textDocument: { uri: URI },
      position: { line: 0, character: 0 },
    });
    const next = client.next(URI);
    await client.change(URI, { range: range(2, 8, 2, 14), text: '2' });
    assert.equal((await next).version, 3);
    assert.deepEqual(
      client.published.map(({ version }) => version),
      [1, 3],
    );
  });

  it('are sent again when the line they stand on is typed over, since an editor may have lost the mark', async () => {
    const before = await client.opened(URI, BAD_CAPO);
    const again = client.next(URI);
    await client.change(URI, { range: range(2, 0, 2, 14), text: 'capo:   banana' });
    assert.deepEqual(await again, { uri: URI, version: 2, diagnostics: before });
  });

  it('take changes that arrive together as one', async () => {
    await client.opened(URI, LANTERN);
    const last = client.next(URI, ({ version }) => version === 42);
    const messages = Array.from({ length: 41 }, (_, i) => ({
      method: 'textDocument/didChange',
      params: {
        textDocument: { uri: URI, version: i + 2 },
        contentChanges: [{ range: range(2, 0, 2, 99), text: i % 2 === 0 ? 'capo:   banana' : 'capo:   2' }],
      },
    }));
    client.notifyTogether(messages);
    assert.equal((await last).diagnostics.length, 1);
    assert.ok(client.published.length < 10, `${client.published.length} publications`);
  });

  it('are cleared when the document closes', async () => {
    await client.opened(URI, BAD_CAPO);
    const cleared = client.next(URI);
    await client.close(URI);
    assert.deepEqual((await cleared).diagnostics, []);
  });

  it('are at most 200, and the last one says how many there are besides', async () => {
    const wrong = '\nD4 |99--|\nA3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nD2 |----|\n';
    const one = await client.opened('file:///one.pegbox', `tuning: DADGAD\n${wrong}`);
    assert.deepEqual(
      one.map(({ severity }) => severity),
      [DiagnosticSeverity.Error],
    );
    const found = await client.opened(URI, `tuning: DADGAD\n${wrong.repeat(250)}`);
    assert.equal(found.length, 200);
    const last = found.at(-1);
    assert.ok(last);
    assert.equal(last.code, 'more');
    assert.equal(last.severity, DiagnosticSeverity.Error);
    assert.equal(last.codeDescription, undefined);
    assert.match(textOf(last), /^51 more, 51 of them errors: /);
  });

  it('show the gravest where there are more than 200', async () => {
    const wrong = '\nD4 |99--|\nA3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nD2 |----|\n';
    const found = await client.opened(URI, `${'capo: 2\n'.repeat(300)}tuning: DADGAD\n${wrong}`);
    assert.equal(found.length, 200);
    assert.equal(found.filter(({ severity }) => severity === DiagnosticSeverity.Error).length, 1);
    assert.match(textOf(found.at(-1)), /^\d+ more: /);
  });
});
