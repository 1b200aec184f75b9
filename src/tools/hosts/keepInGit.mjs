// Makes a folder a Git repository with one commit, for the tests that compare with an earlier version.
import { spawnSync } from 'node:child_process';

/** Whoever runs the tests: their own settings and hooks are left out. */
const asNobody = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'A Player',
  GIT_AUTHOR_EMAIL: 'player@example.org',
  GIT_COMMITTER_NAME: 'A Player',
  GIT_COMMITTER_EMAIL: 'player@example.org',
};

/**
 * Does nothing on a machine without Git.
 * @param {string} folder
 */
export function keepInGit(folder) {
  const env = { ...process.env, ...asNobody };
  for (const args of [
    ['init', '--quiet'],
    ['add', '.'],
    ['commit', '--quiet', '-m', 'The song as it was'],
  ])
    if (spawnSync('git', args, { cwd: folder, env, stdio: 'ignore' }).status !== 0) return;
}
