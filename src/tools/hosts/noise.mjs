const starts = [
  'Ignoring fetching additional',
  'Ignoring the error while validating',
  'Updating additional builtin',
  'Found additional builtin',
  'Loading development extension',
  '[AgentHost',
  '[AccountPolicyGate',
  '[ChatModel',
  '[RemoteAgentHost',
  '[Service Worker]',
  '[reconnection-grace-time]',
  'ChatSessionStore',
  'Resolving connection token',
  'Resolved connection token',
  'Creating a socket',
  'vscode-test-web-support fs provider',
];

/**
 * Whether a console line comes from the workbench itself, not from a test.
 * @param {string} line
 */
export const isNoise = (line) =>
  starts.some((start) => line.startsWith(start)) ||
  /^Request to '.*package\.nls\.json' failed|authentication provider 'github'/.test(line);
