// Runs the editor tests in an extension host in a browser's web worker.
import 'mocha/mocha';
import { expected } from './expectedHost';
import { resultLine } from './resultLine';

/** Called by the extension host. Rejects when a test failed. */
export function run(): Promise<void> {
  expected.host = 'web';
  mocha.setup({ ui: 'bdd', timeout: 60_000, reporter: 'spec' });
  // Only now: the tests call `describe` while they load.
  return import('all-editor-tests').then(
    () => new Promise((resolve, reject) => resultLine(mocha.run(), resolve, reject)),
  );
}
