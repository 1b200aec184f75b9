/** The extension host that the runner was bundled for; the suite checks that it is in that one. */
export const expected: { host: 'node' | 'web' } = { host: 'node' };
