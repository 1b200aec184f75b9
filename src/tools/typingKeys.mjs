// Writes the key bindings of typing over the staff into package.json. Usage: node src/tools/typingKeys.mjs [--check]
//
// Bound by language alone, never by where the cursor stands: the editor's knowledge of that comes late, and keys would be
// lost. Each key goes to the extension, which decides when the key's turn comes. `pegbox.typing.fresh` is set in the window
// itself, in the same moment as a key is pressed (by the command behind the API's setContext); with `pegbox.typing.free` it
// says whether every key before has been dealt with and none stands on a staff, so that text keys other than digits may go
// to the editor directly (src/extension/typing/keyRouting.ts).
import { readFileSync, writeFileSync } from 'node:fs';
import prettier from 'prettier';
import { inRoot } from './paths.mjs';

/** Where Pegbox keeps out: whatever takes the keys itself. The last four are set by extensions for modal editing. */
const always = [
  'editorLangId == pegbox',
  'editorTextFocus',
  'config.pegbox.typeOverStaff',
  '!editorReadonly',
  '!isComposing',
  '!suggestWidgetVisible',
  '!renameInputVisible',
  '!inSnippetMode',
  '!vim.active',
  '!neovim.init',
  '!dance.mode',
  '!modaledit.normal',
];
const asText = '(!pegbox.typing.free || pegbox.typing.fresh)';

/** The editor's own commands, in their turn. @type {[string, string, string?][]} */
const commands = [
  ['left', 'cursorLeft'],
  ['right', 'cursorRight'],
  ['up', 'cursorUp'],
  ['down', 'cursorDown'],
  ['home', 'cursorHome'],
  ['end', 'cursorEnd'],
  ['shift+left', 'cursorLeftSelect'],
  ['shift+right', 'cursorRightSelect'],
  ['shift+up', 'cursorUpSelect'],
  ['shift+down', 'cursorDownSelect'],
  ['shift+home', 'cursorHomeSelect'],
  ['shift+end', 'cursorEndSelect'],
  ['ctrl+z', 'undo', 'cmd+z'],
  ['ctrl+y', 'redo', 'cmd+y'],
  ['ctrl+shift+z', 'redo', 'cmd+shift+z'],
];

/** @param {string} signs @param {string} keys @param {string} [before] @returns {[string, string][]} */
const pairs = (signs, keys, before = '') =>
  [...signs].flatMap((sign, i) => (keys[i] ? [[`${before}${keys[i]}`, sign]] : []));

const letters = 'abcdefghijklmnopqrstuvwxyz';

/** Text keys by the keyboards on which they give these signs. */
const texts = {
  every: [
    ...pairs(letters, letters),
    ...pairs(letters.toUpperCase(), letters, 'shift+'),
    ...pairs('-.,', '-.,'),
    ['space', ' '],
    ['enter', '\n'],
    ['numpad_subtract', '-'],
    ['numpad_divide', '/'],
    ['numpad_multiply', '*'],
    ['numpad_add', '+'],
  ],
  keypadDigits: pairs('0123456789', '0123456789', 'numpad'),
  digitsUnshifted: pairs('0123456789', '0123456789'),
  us: [
    ...pairs(')!@#$%^&*(', '0123456789', 'shift+'),
    ...pairs("=[]\\;'/`", "=[]\\;'/`"),
    ...pairs('_+{}|:"<>?~', "-=[]\\;',./`", 'shift+'),
    ['numpad_decimal', '.'],
  ],
};

/** @param {string} key @param {string} command @param {unknown} args @param {string[]} when @param {string} [mac] */
const binding = (key, command, args, when, mac) => ({
  key,
  ...(mac && { mac }),
  command: 'runCommands',
  args: {
    commands: [
      { command: '_setContext', args: ['pegbox.typing.fresh', true] },
      { command, ...(args !== undefined && { args }) },
    ],
  },
  when: [...always, ...when].join(' && '),
});

export const keybindings = [
  ...commands.map(([key, command, mac]) => binding(key, 'pegbox.typing.run', command, [], mac)),
  ...['backspace', 'shift+backspace'].map((key) => binding(key, 'pegbox.typing.backspace', undefined, [])),
  binding('delete', 'pegbox.typing.delete', undefined, []),
  ...texts.every.map(([key = '', sign]) => binding(key, 'pegbox.typing.sign', sign, [asText])),
  ...texts.keypadDigits.map(([key = '', sign]) => binding(key, 'pegbox.typing.sign', sign, [])),
  ...texts.digitsUnshifted.map(([key = '', sign]) =>
    binding(key, 'pegbox.typing.sign', sign, ['config.pegbox.keyboard != digitsShifted']),
  ),
  ...texts.us.map(([key = '', sign]) =>
    binding(key, 'pegbox.typing.sign', sign, [asText, 'config.pegbox.keyboard == us']),
  ),
];

if (process.argv[1]?.endsWith('typingKeys.mjs')) {
  const file = inRoot('package.json');
  const text = readFileSync(file, 'utf8');
  const all = JSON.parse(text);
  const { menus, ...rest } = all.contributes;
  const { keybindings: _old, ...others } = rest;
  void _old;
  // Before the menus, where the commands end.
  const contributes = Object.fromEntries(
    Object.entries({ ...others }).flatMap(([name, value]) =>
      name === 'commands'
        ? [
            [name, value],
            ['keybindings', keybindings],
            ['menus', menus],
          ]
        : [[name, value]],
    ),
  );
  const options = await prettier.resolveConfig(file);
  const written = await prettier.format(JSON.stringify({ ...all, contributes }), {
    ...options,
    parser: 'json-stringify',
  });
  if (process.argv.includes('--check')) process.exitCode = written === text ? 0 : 1;
  else writeFileSync(file, written);
}
