import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'chai';

interface Command {
  readonly command: string;
  readonly category?: string;
  readonly title: string;
  readonly enablement?: string;
}

interface MenuItem {
  /** Left out where the item opens a menu. */
  readonly command: string;
  readonly submenu?: string;
  readonly when?: string;
}

const ROOT = path.join(__dirname, '../../..');

/** Commands that work whatever is open, and why. */
const ANYWHERE: ReadonlyMap<string, string> = new Map([
  ['pegbox.newTab', 'makes a tab of its own'],
  ['pegbox.openExample', 'opens a tab of its own'],
  ['pegbox.showNeck', 'opens the side bar, which says itself what it waits for'],
]);

/** What a tab, its preview, a page of Pegbox or a folder is known by. */
const PLACES = [
  'editorLangId == pegbox',
  'resourceScheme == pegbox-preview',
  "activeWebviewPanelId == 'pegbox.",
  'workspaceFolderCount > 0',
];

/** Commands of a tab that only read it, so that the texts of a preview can be asked too. */
const READS_PREVIEWS = [
  'findShapes',
  'openHelp',
  'saveHandout',
  'saveNeck',
  'showGrip',
  'showHandTable',
  'showTuningSheet',
].map((name) => `pegbox.${name}`);

/** Words that a title leaves small. */
const SMALL = new Set([
  'a',
  'an',
  'as',
  'by',
  'for',
  'from',
  'in',
  'into',
  'of',
  'on',
  'or',
  'over',
  'the',
  'to',
  'with',
]);

/** The conditions of which one must hold, each as the conditions that must hold together. */
function conditions(when: string): string[][] {
  return when.split(' || ').map((one) => one.split(' && '));
}

describe('the commands in the palette', () => {
  const { contributes } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as {
    readonly contributes: {
      readonly commands: readonly Command[];
      readonly menus: Readonly<Record<string, readonly MenuItem[]>>;
    };
  };
  const { commands, menus } = contributes;
  const palette = new Map(menus['commandPalette']?.map(({ command, when }) => [command, when]));

  it('are found under Pegbox, each by a title of its own', () => {
    for (const { command, category } of commands) expect(category, command).to.equal('Pegbox');
    const titles = commands.map(({ title }) => title);
    expect(titles.filter((title, i) => titles.indexOf(title) !== i)).to.deep.equal([]);
  });

  it('are written in one style: capitals, no full stop, three dots where something is asked first', () => {
    for (const { command, title } of commands) {
      expect(title, command).to.match(/^[A-Z][A-Za-z' ]*[a-z](?:…)?$|^[A-Z][A-Za-z' ]*SVG…$/);
      const words = title.replace(/…$/, '').split(' ');
      for (const [i, word] of words.entries())
        if (i === 0 || !SMALL.has(word.toLowerCase())) expect(word, title).to.match(/^[A-Z]/);
    }
  });

  it('stand there only where they can work', () => {
    for (const { command } of commands) {
      if (ANYWHERE.has(command)) {
        expect(palette.has(command), `${command} ${ANYWHERE.get(command)}`).to.equal(false);
        continue;
      }
      for (const all of conditions(palette.get(command) ?? ''))
        expect(
          all.some((one) => PLACES.some((place) => one.startsWith(place))),
          `${command} says a place`,
        ).to.equal(true);
    }
  });

  it('leave previews alone when they change the text or follow the cursor', () => {
    for (const { command } of commands) {
      const when = palette.get(command) ?? '';
      if (!when.startsWith('editorLangId') || READS_PREVIEWS.includes(command)) continue;
      expect(when, command).to.include('resourceScheme != pegbox-preview');
    }
    for (const command of READS_PREVIEWS) expect(palette.get(command), command).to.be.a('string');
  });

  it('are not offered where a key bound to them would do nothing', () => {
    for (const { command, enablement } of commands) {
      if (enablement === undefined || ANYWHERE.has(command)) continue;
      const offered = conditions(palette.get(command) ?? '');
      for (const all of offered)
        expect(
          conditions(enablement).some((needed) => needed.every((one) => all.includes(one))),
          `${command}: ${all.join(' && ')} against ${enablement}`,
        ).to.equal(true);
    }
  });

  it('are there for every button and menu, so that the keyboard reaches them', () => {
    const known = new Set(commands.map(({ command }) => command));
    for (const [menu, items] of Object.entries(menus))
      for (const { command, submenu, when } of items) {
        // A menu within a menu holds commands of its own, which are looked at in their turn.
        if (submenu !== undefined) expect(menus[submenu], `${menu}: ${submenu}`).to.be.an('array');
        else expect(known.has(command), `${menu}: ${command}`).to.equal(true);
        if (menu === 'commandPalette') expect(when, command).not.to.equal('false');
      }
  });
});
