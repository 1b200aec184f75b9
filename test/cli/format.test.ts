import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileWith, pegbox, unreadable } from './pegbox';

const RAGGED = 'instrument: ukulele\n\nA |0---|\nEb|----\nC|----|\nG|----|\n';
const IN_ORDER = 'instrument: ukulele\n\nA |0---|\nEb|----|\nC |----|\nG |----|\n';

describe('format', () => {
  it('prints the text in order, from a file or from standard input', async () => {
    const file = fileWith('ragged.pegbox', RAGGED);
    assert.deepEqual(await pegbox(['format', file]), { code: 0, out: IN_ORDER, err: '' });
    assert.deepEqual(await pegbox(['format', '-'], RAGGED), { code: 0, out: IN_ORDER, err: '' });
    assert.equal(readFileSync(file, 'utf8'), RAGGED);
  });

  it('keeps line ends and the byte order mark', async () => {
    const text = `\uFEFF${RAGGED.replaceAll('\n', '\r\n')}`;
    const { out } = await pegbox(['format', '-'], text);
    assert.equal(out, `\uFEFF${IN_ORDER.replaceAll('\n', '\r\n')}`);
  });

  it('writes the files that are not in order, and names them', async () => {
    const [ragged, neat] = [fileWith('w1.pegbox', `\uFEFF${RAGGED}`), fileWith('w2.pegbox', IN_ORDER)];
    assert.deepEqual(await pegbox(['format', ragged, neat, '--write']), {
      code: 0,
      out: `${ragged}\n`,
      err: '1 of 2 files changed.\n',
    });
    assert.equal(readFileSync(ragged, 'utf8'), `\uFEFF${IN_ORDER}`);
    assert.equal(readFileSync(neat, 'utf8'), IN_ORDER);
  });

  it('tells with --check what is not in order, by exit code 1, and writes nothing', async () => {
    const [ragged, neat] = [fileWith('c1.pegbox', RAGGED), fileWith('c2.pegbox', IN_ORDER)];
    assert.deepEqual(await pegbox(['format', '--check', neat, ragged]), {
      code: 1,
      out: `${ragged}\n`,
      err: '1 of 2 files in order.\n',
    });
    assert.equal(readFileSync(ragged, 'utf8'), RAGGED);
    assert.deepEqual(await pegbox(['format', '--check', neat]), {
      code: 0,
      out: '',
      err: '1 of 1 file in order.\n',
    });
  });

  it('refuses what cannot be done, before anything is written', async () => {
    const ragged = fileWith('r1.pegbox', RAGGED);
    assert.match(await unreadable(['format', ragged, ragged]), /several files say --write or --check/);
    assert.match(await unreadable(['format', ragged, '--write', '--check']), /leave one out/);
    assert.match(await unreadable(['format', '-', '--write'], RAGGED), /cannot be written/);
    assert.match(await unreadable(['format', '--write', ragged, `${ragged}.none`]), /There is no file/);
    assert.equal(readFileSync(ragged, 'utf8'), RAGGED);
  });
});
