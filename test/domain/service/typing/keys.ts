import { Document } from '../../../../src/notation/document';
import type { Cursor, TypedKey } from '../../../../src/service/typing/typedKey';
import { typeOver } from '../../../../src/service/typing/typeOver';

/* Keys typed one after the other into a text with cursors written as `<|>`. */

export interface Typed {
  /** The text with its cursors. */
  readonly text: string;
  readonly notices: readonly string[];
}

/** Keys: a character each; `⌫` Backspace, `⌦` Delete. Outside a staff a character is put in as an editor does. */
export function typed(marked: string, keys: string): Typed {
  const { text, cursors } = readCursors(marked);
  const document = new Document(text);
  let at: readonly Cursor[] = cursors;
  const notices: string[] = [];
  for (const sign of keys) {
    const key: TypedKey = sign === '⌫' ? 'backspace' : sign === '⌦' ? 'delete' : { text: sign };
    const done = typeOver(document, at, key);
    if (done.kind === 'text') throw new Error(`“${sign}” is plain text here:\n${show(document.text(), at)}`);
    // From the end, so that places before stay.
    document.edit([...done.edits].reverse());
    at = done.cursors;
    if (done.notice !== undefined) notices.push(done.notice);
  }
  return { text: show(document.text(), at), notices };
}

/** Whether a key is plain text at the cursor. */
export function isText(marked: string, key: TypedKey): boolean {
  const { text, cursors } = readCursors(marked);
  return typeOver(new Document(text), cursors, key).kind === 'text';
}

/** The text without its marks, and the cursors. `<[>` begins what the next cursor selects. */
export function readCursors(marked: string): { readonly text: string; readonly cursors: Cursor[] } {
  const cursors: Cursor[] = [];
  const lines = marked.split('\n').map((raw, line) => {
    let own = raw;
    let anchor: number | undefined;
    for (let at = own.search(/<[|[]>/); at >= 0; at = own.search(/<[|[]>/)) {
      if (own[at + 1] === '[') anchor = at;
      else {
        cursors.push({ anchor: { line, character: anchor ?? at }, active: { line, character: at } });
        anchor = undefined;
      }
      own = own.slice(0, at) + own.slice(at + 3);
    }
    return own;
  });
  if (cursors.length === 0) throw new Error('No cursor: write <|> where it is.');
  return { text: lines.join('\n'), cursors };
}

function show(text: string, cursors: readonly Cursor[]): string {
  const lines = text.split('\n');
  const last = [...cursors].sort(
    (a, b) => b.active.line - a.active.line || b.active.character - a.active.character,
  );
  for (const { active } of last) {
    const line = lines[active.line] ?? '';
    lines[active.line] = `${line.slice(0, active.character)}<|>${line.slice(active.character)}`;
  }
  return lines.join('\n');
}
