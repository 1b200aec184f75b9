import assert from 'node:assert/strict';
import { applyEdits } from '../../../../src/cli/applyEdits';
import type { CompletionItem } from '../../../../src/service/records';
import { openAt, service, settings } from '../cursor';

function offered(marked: string): readonly CompletionItem[] {
  const { document, place } = openAt(marked);
  return service.completion(document, place, settings);
}

/** The text after taking an offer with all that comes with it; throws where two edits overlap. */
function taken(marked: string, item: CompletionItem | undefined): string {
  if (!item) throw new Error('Nothing is offered.');
  const { document } = openAt(marked);
  return applyEdits(document.text(), [item.edit, ...(item.moreEdits ?? [])]);
}

const song = (row: string): string => `tuning: DADGAD

chords |${row}|
D4     |--------|0-------|
A3     |--------|--------|
G3     |--------|--------|
D3     |--------|--------|
A2     |--------|--------|
D2     |--------|--------|
`;

describe('shapes at a chord’s name', () => {
  it('are offered where its row has the cursor on it or right behind it', () => {
    for (const row of ['G<|>       |C       ', '<|>G       |C       ']) {
      const items = offered(song(row));
      assert.ok(items.length > 5 && items.length <= 12);
      assert.ok(items.every(({ label }) => /^G(?: (?:x|\d+)){6}$/.test(label)));
      assert.match(items[0]?.detail ?? '', /^full, /);
      assert.match(items[0]?.documentation ?? '', /Every tone of the chord sounds\.$/);
      const sorted = [...items].sort((a, b) => (a.sortText < b.sortText ? -1 : 1));
      assert.deepEqual(sorted, items);
    }
  });

  it('are written under it, the name and the rest of the text staying', () => {
    const marked = song('G<|>       |C       ');
    const item = offered(marked).find(({ label }) => label === 'G 5 5 0 4 5 0');
    assert.equal(
      taken(marked, item),
      `tuning: DADGAD

chords |G       |C       |
D4     |0-------|0-------|
A3     |5-------|--------|
G3     |4-------|--------|
D3     |0-------|--------|
A2     |5-------|--------|
D2     |5-------|--------|
`,
    );
  });

  it('every one of them, without moving another note or name, also where room is made', () => {
    const marked = `tuning: DADGAD

chords |G<|>C      |
D4     |--------|
A3     |--------|
G3     |--------|
D3     |--------|
A2     |--------|
D2     |-0-2----|
`;
    // The cursor stands between two names that touch, which are read as one.
    assert.deepEqual(offered(marked), []);
    const apart = marked.replace('G<|>C ', 'G<|> C');
    const items = offered(apart);
    // Those that need string 6 right before its note cannot be written and are not offered.
    assert.ok(items.some(({ label }) => / \d\d /.test(label)));
    for (const item of items) {
      const text = taken(apart, item);
      const [system] = service.open(text, settings).systems;
      assert.ok(system);
      const rows = system.reading.rows.find(({ row }) => row === 'chords')?.marks.map((mark) => mark.text);
      assert.deepEqual(rows, ['G', 'C'], text);
      const frets = item.label.split(' ').slice(1);
      const first = system.reading.notes.filter(({ onset }) => onset.n === 0);
      const written = frets.map((_, i) => first.find(({ string }) => string === frets.length - i)?.fret);
      const inner = frets.map((fret, i) => (fret === 'x' ? undefined : Number(fret)) ?? written[i]);
      assert.deepEqual(written, inner, text);
      // The bass stays at its times.
      const bass = system.reading.notes.filter(({ onset, string }) => onset.n > 0 && string === 6);
      assert.deepEqual(
        bass.map(({ fret, onset }) => [fret, onset.n / onset.d]),
        [
          [0, 0.5],
          [2, 1.5],
        ],
        text,
      );
    }
  });

  it('nothing away from a name, for a name that cannot be read, and in rows alone', () => {
    assert.deepEqual(offered(song('G   <|>    |C       ')), []);
    assert.deepEqual(offered(song('Hx<|>      |C       ')), []);
    assert.deepEqual(offered(song('N.C.<|>    |C       ')), []);
    assert.deepEqual(offered('chords |G<|>   |\nwords  |la  |\n'), []);
    assert.deepEqual(offered(song('G       |C       ').replace('chords |G', 'words  |G<|>')), []);
  });
});
