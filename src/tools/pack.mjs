// Packs the extension, as it was built last, into pegbox.vsix. Usage: node src/tools/pack.mjs
import { rmSync } from 'node:fs';
import { inRoot } from './paths.mjs';
import { run } from './run.mjs';

/**
 * @returns {Promise<string>} the package
 * @throws {Error} with the packer's words when it refuses
 */
export async function pack() {
  const file = inRoot('pegbox.vsix');
  rmSync(file, { force: true });
  const vsce = inRoot('node_modules/@vscode/vsce/vsce');
  const args = [
    vsce,
    'package',
    '--no-dependencies',
    '--no-rewrite-relative-links',
    '--allow-missing-repository',
  ];
  args.push('--out', file);
  const { code, output } = await run(process.execPath, args);
  if (code !== 0) throw new Error(`The package was not made:\n${output.trim()}`);
  return file;
}

if (process.argv[1] === import.meta.filename) {
  try {
    await pack();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
