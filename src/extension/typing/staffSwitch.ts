import * as vscode from 'vscode';

const SETTING = 'typeOverStaff';
const COMMAND = 'pegbox.switchTypeOverStaff';

/** Shows in the status bar of a tab whether one types over the staff, and switches it. */
export function registerStaffSwitch(): vscode.Disposable {
  const item = vscode.window.createStatusBarItem(
    'pegbox.typeOverStaff',
    vscode.StatusBarAlignment.Right,
    100,
  );
  item.name = 'Typing over the Staff';
  item.command = COMMAND;
  const show = (): void => {
    const document = vscode.window.activeTextEditor?.document;
    if (document?.languageId !== 'pegbox') return item.hide();
    const on = isOn();
    item.text = on ? '$(edit) Over the staff: on' : '$(edit) Over the staff: off';
    item.tooltip = on
      ? 'On a string line, what you type takes the place of the dashes, so that every column stays in its place. Select to type as in any other text.'
      : 'What you type on a string line is put in and moves the rest of the line. Select to type over the dashes.';
    item.accessibilityInformation = {
      label: `Typing over the staff is ${on ? 'on' : 'off'}`,
      role: 'button',
    };
    item.show();
  };
  show();
  return vscode.Disposable.from(
    item,
    vscode.window.onDidChangeActiveTextEditor(show),
    vscode.workspace.onDidOpenTextDocument(show),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration(`pegbox.${SETTING}`)) show();
    }),
    vscode.commands.registerCommand(COMMAND, async () => {
      const configuration = vscode.workspace.getConfiguration('pegbox');
      const now = !isOn();
      // Where the workspace says it, that is what holds.
      const inWorkspace = configuration.inspect(SETTING)?.workspaceValue !== undefined;
      await configuration.update(
        SETTING,
        now,
        inWorkspace ? vscode.ConfigurationTarget.Workspace : vscode.ConfigurationTarget.Global,
      );
      void vscode.window.setStatusBarMessage(
        now ? 'You type over the staff now.' : 'You type as in any other text now.',
        3000,
      );
    }),
  );
}

function isOn(): boolean {
  return vscode.workspace.getConfiguration('pegbox').get(SETTING, true);
}
