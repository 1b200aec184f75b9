import * as vscode from 'vscode';
import { Mirrors } from './mirrors';
import { registerStaffSwitch } from './staffSwitch';
import { Typing } from './typing';

/** Typing over the staff: its keys and its switch. */
export function registerTyping(): vscode.Disposable {
  const mirrors = new Mirrors();
  return vscode.Disposable.from(mirrors, new Typing(mirrors), registerStaffSwitch());
}
