// Settings that keep the editor to itself: no welcome pages, no telemetry, no look for updates.
export const quietSettings = {
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.enableExperiments': false,
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'update.mode': 'none',
  'git.enabled': false,
  // Pegbox prefers the user's side; in this server that would be the browser, not the Node host.
  'remote.extensionKind': { 'pegbox.pegbox': ['workspace'] },
};
