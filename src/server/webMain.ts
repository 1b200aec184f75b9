import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from 'vscode-languageserver/browser';
import type { Later } from './diagnosticsPublisher';
import { startServer } from './serverCore';

/** The worker's own global scope; the compiler's libraries describe a page or Node. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

startServer(
  createConnection(ProposedFeatures.all, new BrowserMessageReader(self), new BrowserMessageWriter(self)),
  laterByMessage(),
);

/** A worker has no `setImmediate`, and a timer waits 4 ms: a message to oneself comes right after those that wait. */
function laterByMessage(): Later {
  const tasks: (() => void)[] = [];
  const { port1, port2 } = new MessageChannel();
  port1.addEventListener('message', () => tasks.shift()?.());
  port1.start();
  return (task) => {
    tasks.push(task);
    port2.postMessage(undefined);
  };
}
