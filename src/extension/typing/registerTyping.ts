import * as vscode from 'vscode';
import type { ChangeTools } from '../changeCommand';
import { Mirrors } from './mirrors';
import { registerStaffCommands } from './staffCommands';
import { registerStaffSwitch } from './staffSwitch';
import { registerTypeShape } from './typeShape';
import { Typing } from './typing';

/** Typing over the staff: its keys, its switch, and the commands that go with it. */
export function registerTyping(tools: ChangeTools): vscode.Disposable {
  const mirrors = new Mirrors();
  return vscode.Disposable.from(
    mirrors,
    new Typing(mirrors),
    registerStaffSwitch(),
    registerStaffCommands(mirrors),
    registerTypeShape(tools),
  );
}
