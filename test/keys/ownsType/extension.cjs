// Takes the editor's `type`, as an extension for modal editing does, and passes everything on.
const vscode = require('vscode');

exports.activate = (context) => {
  context.subscriptions.push(
    vscode.commands.registerCommand('type', (args) => vscode.commands.executeCommand('default:type', args)),
  );
};
