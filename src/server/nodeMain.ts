import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { startServer } from './serverCore';

// Over `--stdio`, `--node-ipc` (as the desktop client starts it), `--socket=PORT` or `--pipe=NAME`.
if (process.argv.slice(2).some((argument) => /^--(stdio|node-ipc|socket|pipe)\b/.test(argument))) {
  startServer(createConnection(ProposedFeatures.all), setImmediate);
} else {
  process.stderr.write("Pegbox's language server is started by an editor; give it --stdio to talk to it.\n");
  process.exitCode = 2;
}
