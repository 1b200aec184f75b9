import type * as vscode from 'vscode';
import { REQUESTS } from '../server/requests';
import type { Passage } from '../service/serviceApi';
import { pick } from './pick';
import { plainRange, toRange } from './ranges';
import type { ServerRequests } from './serverRequests';
import type { Target } from './target';

/**
 * Asks which passage is meant: the bars of the selection come first when something is selected, else the whole file.
 * One passage alone is not asked about. `'none'` when there is no tab to work on, undefined when the user leaves.
 */
export async function pickPassage(
  requests: ServerRequests,
  target: Target,
  title: string,
): Promise<vscode.Range | 'none' | undefined> {
  const { passages } = await requests.ask(REQUESTS.passages, {
    uri: target.document.uri.toString(),
    selection: plainRange(target.selection),
  });
  const items = passages.map((passage) => ({
    label: passage.title,
    description: linesText(passage),
    passage,
  }));
  const [first] = items;
  if (first === undefined) return 'none';
  if (items.length === 1) return toRange(first.passage.range);
  const wanted: Passage['kind'] = target.selection.isEmpty ? 'file' : 'selection';
  const active = items.find(({ passage }) => passage.kind === wanted) ?? first;
  const picked = await pick(items, { title, placeholder: 'Which passage?', active });
  return picked && toRange(picked.passage.range);
}

function linesText({ range }: Passage): string {
  const [from, to] = [range.start.line + 1, range.end.line + 1];
  return from === to ? `line ${from}` : `lines ${from}–${to}`;
}
