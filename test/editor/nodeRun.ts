// Runs the editor tests in an extension host with Node: in the Node host, or in a desktop VS Code.
import Mocha from 'mocha';
import { expected } from './expectedHost';
import { resultLine } from './resultLine';

/** Called by the extension host. Rejects when a test failed. */
export function run(): Promise<void> {
  expected.host = 'node';
  const mocha = new Mocha({ ui: 'bdd', timeout: 60_000, reporter: 'spec', color: false });
  mocha.suite.emit('pre-require', globalThis, '', mocha);
  // Only now: the tests call `describe` while they load.
  return import('all-editor-tests').then(
    () => new Promise((resolve, reject) => resultLine(mocha.run(), resolve, reject)),
  );
}
