import * as vscode from 'vscode';
import type { Position, Range } from 'vscode-languageclient';
import { REQUESTS, type ColumnsParams, type CommandTarget } from '../../server/requests';
import type { ColumnAction } from '../../service/columns/columnsRequest';
import { applyEdits, CHANGED_MEANWHILE, refuse, tellReport, type ChangeOutcome } from '../applyChange';
import { askText } from '../askText';
import type { ChangeTools } from '../changeCommand';
import { plainRange, toRange } from '../ranges';
import { isGrave } from '../reportText';
import { findTarget } from '../target';

/** For keybindings and other extensions; what is left out is asked for, or read from the clipboard. */
export interface ColumnToolArguments extends CommandTarget {
  readonly width?: number;
  readonly text?: string;
  readonly withNotes?: boolean;
  readonly overBar?: 'push' | 'refuse';
}

interface Tool {
  readonly command: string;
  readonly title: string;
  readonly action: ColumnAction;
  readonly step?: 'beat' | 'column';
}

const TOOLS: readonly Tool[] = [
  { command: 'pegbox.insertColumn', title: 'Insert column', action: 'insertColumn' },
  { command: 'pegbox.removeColumn', title: 'Remove column', action: 'removeColumn' },
  { command: 'pegbox.insertBeat', title: 'Insert beat', action: 'insertBeat' },
  { command: 'pegbox.removeBeat', title: 'Remove beat', action: 'removeBeat' },
  { command: 'pegbox.shiftLater', title: 'Shift notes later', action: 'shiftLater', step: 'column' },
  { command: 'pegbox.shiftSooner', title: 'Shift notes sooner', action: 'shiftSooner', step: 'column' },
  { command: 'pegbox.shiftBeatLater', title: 'Shift notes a beat later', action: 'shiftLater', step: 'beat' },
  {
    command: 'pegbox.shiftBeatSooner',
    title: 'Shift notes a beat sooner',
    action: 'shiftSooner',
    step: 'beat',
  },
  { command: 'pegbox.insertBar', title: 'Insert bar', action: 'insertBar' },
  { command: 'pegbox.removeBars', title: 'Remove bars', action: 'removeBars' },
  { command: 'pegbox.duplicateBars', title: 'Duplicate bars', action: 'duplicateBars' },
  { command: 'pegbox.splitSystem', title: 'Split system', action: 'splitSystem' },
  { command: 'pegbox.joinSystems', title: 'Join systems', action: 'joinSystems' },
  { command: 'pegbox.fitToWidth', title: 'Fit to width', action: 'fitWidth' },
  { command: 'pegbox.pasteBarsBetween', title: 'Paste bars between', action: 'pasteBetween' },
  { command: 'pegbox.pasteBarsOver', title: 'Paste bars over', action: 'pasteOver' },
];

/** How long the status bar tells what was done, in milliseconds. */
const TOLD_FOR = 6000;

/** Commands for columns, beats and bars of all lines at once. Each is made at once, as typing is, with one undo. */
export function registerColumnTools(tools: ChangeTools): vscode.Disposable[] {
  return [...TOOLS.map((tool) => columnTool(tool, tools)), copyTool(tools)];
}

function columnTool(tool: Tool, { requests, pages }: ChangeTools): vscode.Disposable {
  return vscode.commands.registerCommand(
    tool.command,
    guarded(async (given) => {
      const target = await findTarget(given);
      if (target === undefined) return undefined;
      const { document, selection } = target;
      const more = await wishes(tool, document, given);
      if (more === undefined) return undefined;
      const { action, title, step } = tool;
      const asked: ColumnsParams = {
        uri: document.uri.toString(),
        range: plainRange(selection),
        action,
        ...(step && { step, ranges: otherSelections(document, given) }),
        overBar: given?.overBar ?? overBarOf(document),
        ...more,
      };
      let answer = await requests.ask(REQUESTS.columns, asked);
      if ('error' in answer && action === 'removeBars' && given?.withNotes === undefined) {
        // Where notes alone are in the way the user decides about them.
        const along = await requests.ask(REQUESTS.columns, { ...asked, withNotes: true });
        if (!('error' in along)) {
          const remove = 'Remove the Notes Too';
          const detail = answer.error;
          const taken = await vscode.window.showWarningMessage(
            'Remove the notes too?',
            { modal: true, detail },
            remove,
          );
          if (taken !== remove) return undefined;
          answer = along;
        }
      }
      if ('error' in answer) return refuse(answer.error);
      if (!(await applyEdits(document, answer.version, answer.edits))) return refuse(CHANGED_MEANWHILE);
      const { report, goesOn, selects } = answer;
      if (goesOn) goTo(document, goesOn, selects);
      if (isGrave(report)) tellReport(document.uri, report, title, pages);
      else vscode.window.setStatusBarMessage(report.remarks.join(' '), TOLD_FOR);
      return { report };
    }),
  );
}

function copyTool({ requests }: ChangeTools): vscode.Disposable {
  return vscode.commands.registerCommand(
    'pegbox.copyBars',
    guarded(async (given) => {
      const target = await findTarget(given);
      if (target === undefined) return undefined;
      const { document, selection } = target;
      const uri = document.uri.toString();
      const answer = await requests.ask(REQUESTS.copyBars, { uri, range: plainRange(selection) });
      if ('error' in answer) return refuse(answer.error);
      await vscode.env.clipboard.writeText(answer.text);
      vscode.window.setStatusBarMessage('The bars are copied with all strings and rows.', TOLD_FOR);
      return undefined;
    }),
  );
}

/** What an action needs beside its place; undefined when the user leaves. */
async function wishes(
  { action, title }: Tool,
  document: vscode.TextDocument,
  given: ColumnToolArguments | undefined,
): Promise<Pick<ColumnsParams, 'width' | 'text' | 'withNotes'> | undefined> {
  if (action === 'pasteBetween' || action === 'pasteOver')
    return { text: given?.text ?? (await vscode.env.clipboard.readText()) };
  if (action === 'removeBars') return given?.withNotes === undefined ? {} : { withNotes: given.withNotes };
  if (action !== 'fitWidth') return {};
  if (given?.width !== undefined) return { width: given.width };
  const typed = await askText({
    title,
    prompt: 'The most columns of a line, 20 or more',
    value: String(usualWidth(document)),
    check: (text) =>
      Promise.resolve(
        /^\d+$/.test(text.trim()) && Number(text) >= 20
          ? undefined
          : 'A whole number of 20 or more was expected, such as 80.',
      ),
  });
  return typed === undefined ? undefined : { width: Number(typed) };
}

/** What else is selected, such as the other lines of a block; nothing where a caller named the place. */
function otherSelections(
  document: vscode.TextDocument,
  given: ColumnToolArguments | undefined,
): ReturnType<typeof plainRange>[] {
  const editor = vscode.window.activeTextEditor;
  if (given?.range !== undefined || editor?.document !== document) return [];
  return editor.selections.slice(1).map(plainRange);
}

function overBarOf(document: vscode.TextDocument): 'push' | 'refuse' {
  const set = vscode.workspace.getConfiguration('pegbox', document).get<string>('overBarSign');
  return set === 'refuse' ? 'refuse' : 'push';
}

/** The editor's first ruler, else the column at which it wraps, else 80. */
function usualWidth(document: vscode.TextDocument): number {
  const editor = vscode.workspace.getConfiguration('editor', document);
  const [ruler] = editor.get<readonly (number | { readonly column: number })[]>('rulers') ?? [];
  const width =
    (typeof ruler === 'object' ? ruler.column : ruler) ?? editor.get<number>('wordWrapColumn') ?? 80;
  return width >= 20 ? width : 80;
}

/** Puts the cursor where a player writes on, or selects again what was moved. */
function goTo(document: vscode.TextDocument, place: Position, selects: readonly Range[] = []): void {
  const editor = vscode.window.visibleTextEditors.find((one) => one.document === document);
  if (editor === undefined) return;
  const cursor = new vscode.Position(place.line, place.character);
  const selections = selects.map(toRange).map(({ start, end }) => new vscode.Selection(start, end));
  editor.selections = selections.length > 0 ? selections : [new vscode.Selection(cursor, cursor)];
  editor.revealRange(editor.selection);
}

function guarded(run: (given: ColumnToolArguments | undefined) => Promise<ChangeOutcome>) {
  return async (given?: ColumnToolArguments): Promise<ChangeOutcome> => {
    try {
      return await run(given);
    } catch (error) {
      return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
}
