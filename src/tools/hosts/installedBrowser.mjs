// Where Chrome, Chromium and Edge are usually installed.
import { existsSync } from 'node:fs';
import path from 'node:path';

const onPath = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];

const inPlaces = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: ['ProgramFiles', 'ProgramFiles(x86)', 'LocalAppData'].flatMap((name) =>
    ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'].map((file) =>
      path.join(process.env[name] ?? '', file),
    ),
  ),
};

/** @returns {string | undefined} the program of the first browser found */
export function installedBrowser() {
  const places =
    process.platform === 'darwin' || process.platform === 'win32'
      ? inPlaces[process.platform]
      : onPath.flatMap((name) => (process.env['PATH'] ?? '').split(':').map((dir) => path.join(dir, name)));
  return places.find((place) => existsSync(place));
}
