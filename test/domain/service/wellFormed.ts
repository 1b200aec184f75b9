import assert from 'node:assert/strict';

const PIECE = /<\/([a-z]+)>|<([a-z]+)((?: [a-zA-Z-]+='[^'<&]*')*)(\/?)>|([^<]+)/gy;

/** Whether a text is one well-formed XML element of plain tags, quoted attributes that differ, and escaped text. */
export function assertWellFormed(xml: string): void {
  const open: string[] = [];
  let end = 0;
  let roots = 0;
  for (const [whole, closed, opened, attributes = '', empty, text] of xml.matchAll(PIECE)) {
    end += whole.length;
    if (closed !== undefined) assert.equal(open.pop(), closed, xml);
    else if (opened !== undefined) {
      const names = [...attributes.matchAll(/ ([a-zA-Z-]+)=/g)].map(([, name]) => name);
      assert.equal(new Set(names).size, names.length, `${whole} has an attribute twice`);
      if (open.length === 0) roots++;
      if (empty === '') open.push(opened);
    } else {
      assert.ok(open.length > 0, `text outside the element: ${text ?? ''}`);
      assert.match(text ?? '', /^(?:[^&]|&(?:amp|lt|gt);)*$/);
    }
  }
  assert.equal(end, xml.length, `cannot be read from: ${xml.slice(end, end + 80)}`);
  assert.deepEqual([open, roots], [[], 1]);
}
