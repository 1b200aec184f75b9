import assert from 'node:assert/strict';
import { openAt, service, settings } from './cursor';

const SONG = 'part:  <|>low\n\nE2 |0---|\n\npart: high\n\nE4 |0---|\n\npart: low\n\nE2 |3---|\n';

describe('renaming a part', () => {
  it('renames it everywhere, and nothing else', () => {
    const { document, place } = openAt(SONG);
    const edits = service.rename(document, place, '  first bass ');
    assert.ok(!('error' in edits));
    assert.equal(edits.length, 2);
    document.edit([...edits].reverse());
    assert.equal(document.text(), SONG.replace('<|>', '').replaceAll('low', 'first bass'));
    assert.deepEqual(document.parts, ['first bass', 'high']);
  });

  it('offers the name where it stands', () => {
    const { document, place } = openAt(SONG);
    assert.deepEqual(service.renamable(document, place), {
      range: { start: { line: 0, character: 7 }, end: { line: 0, character: 10 } },
      name: 'low',
    });
    assert.equal(service.renamable(document, { line: 2, character: 4 }), undefined);
    assert.equal(service.renamable(service.open('part:\n', settings), { line: 0, character: 3 }), undefined);
  });

  it('says in a sentence why a name will not do', () => {
    const { document, place } = openAt(SONG);
    const said = (name: string): unknown => service.rename(document, place, name);
    assert.match(JSON.stringify(said('  ')), /A part needs a name/);
    assert.match(JSON.stringify(said('high')), /a part called high already/);
    assert.match(JSON.stringify(said('a\nb')), /stands on one line/);
    assert.deepEqual(said('low'), []);
    assert.match(JSON.stringify(service.rename(document, { line: 2, character: 0 }, 'x')), /Only the name/);
  });
});
