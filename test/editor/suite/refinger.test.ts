import { assert } from 'chai';
import * as vscode from 'vscode';
import { HAND_CONSTANTS } from '../../../src/playing/hand/constants';
import type { ServiceError, SuitResult } from '../../../src/service/serviceApi';
import { closeTabs, lantern, newTab } from './newTab';
import { backInTab, run, shownDiff, undoneOnce } from './shownDiff';
import { waitFor } from './waitFor';

/** A tune in standard tuning that can be played in several places. */
const tune = `title:  Net Mending
tuning: standard

E4 |0-1-3-5-7-8-7-5-|3-1-0-----------|
B3 |----------------|------3-1-0-----|
G3 |----------------|------------2-0-|
D3 |----------------|----------------|
A2 |----------------|----------------|
E2 |----------------|----------------|
`;

/** A barre that four fingers cannot hold without it. */
const barre = `title:  Heavy Rope
tuning: standard

E4 |1---------------|
B3 |1---------------|
G3 |2---------------|
D3 |3---------------|
A2 |3---------------|
E2 |1---------------|
`;

/** Two voices over many bars: the search through its retunings takes seconds. */
const ferry = `title:  Ferry at Low Water
tuning: standard

${[0, 1, 2, 3]
  .map(
    (n) => `E4 |${n}---3---5---3---|0-------2---${n}---|3---2---0-------|${n}---5---7---5---|
B3 |----${n}-------3---|----3-------1---|0-------${n}---3---|----5-------8---|
G3 |--${n}-------2-----|--2-------0-----|--0---2---------|--4---${n}---5-----|
D3 |----------------|------4---------|------${n}---0-----|--------7-------|
A2 |${n}-------0-------|--------${n}-------|2-------0-------|----------------|
E2 |----3-----------|3---------------|----${n}-----------|5-------7-------|
`,
  )
  .join('\n')}`;

describe('a passage that is fingered anew in the editor', () => {
  afterEach(closeTabs);

  it('is shown first, and one undo takes it back', async () => {
    const { document } = await newTab(tune);
    const outcome = await run('pegbox.refinger', { objective: 'closed', preview: true });
    const { compared, kept, notesIn } = outcome?.report ?? {};
    assert.strictEqual(kept, notesIn);
    assert.isBelow(compared?.after ?? NaN, compared?.before ?? NaN);
    const { after } = await shownDiff();
    assert.strictEqual(document.getText(), tune);
    const expected = after.getText();
    assert.notMatch(expected, /^[EBGDA]\d \|[^.]*0/m);
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
    await backInTab(document);
    await undoneOnce(document, tune);
  });

  it('has other ways, shown one after the other', async () => {
    const { document } = await newTab(tune);
    await run('pegbox.convert', { tuning: 'DADGAD', keep: 'sound', preview: true });
    const { after } = await shownDiff();
    const first = after.getText();
    const seen = [first];
    while (seen.length < 4) {
      await run('pegbox.nextAlternative', after.uri);
      const last = seen.at(-1);
      await waitFor(() => after.getText() !== last, 'next way');
      if (after.getText() === first) break;
      assert.notInclude(seen, after.getText());
      seen.push(after.getText());
    }
    assert.isAtLeast(seen.length, 2);
    assert.isAtMost(seen.length, 3);
    await run('pegbox.nextAlternative', after.uri);
    const shown = await waitFor(
      () => after.getText() !== first && after.getText(),
      'a way that is not the first',
    );
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), shown);
  });

  it('is made simpler within the limits given', async () => {
    const { document } = await newTab(barre);
    const outcome = await run('pegbox.simplify', { barres: false });
    assert.isDefined(outcome?.report, outcome?.error);
    assert.isNotEmpty(outcome.report.unplaced);
    assert.notStrictEqual(document.getText(), barre);
    await undoneOnce(document, barre);
  });

  it('says what it cannot do, and leaves the text alone', async () => {
    const { document } = await newTab(tune);
    for (const [command, given] of [
      ['pegbox.refinger', { objective: 'strings', strings: [9] }],
      ['pegbox.refinger', { objective: 'louder' }],
      ['pegbox.simplify', { fingers: 7 }],
      ['pegbox.convert', { tuning: 'standard', keep: 'function', key: 'C' }],
    ] as const) {
      const outcome = await run(command, given);
      assert.match(outcome?.error ?? '', /^[A-Z“].*\.$/s, command);
      assert.strictEqual(document.getText(), tune);
    }
  });
});

describe('a new part in the editor', () => {
  afterEach(closeTabs);

  it('stands under the original, which stays as it is', async () => {
    const { document } = await newTab(lantern);
    const given = { newPart: 'Second guitar', tuning: 'open D', keep: 'sound', preview: true };
    const outcome = await run('pegbox.convertIntoNewPart', given);
    assert.isDefined(outcome?.preview, outcome?.error);
    const { after } = await shownDiff();
    await run('pegbox.takeAll', after.uri);
    const lines = document.getText().split('\n');
    const staff = lantern.split('\n').slice(5, 11);
    const at = lines.indexOf(staff[0] ?? '');
    assert.deepEqual(lines.slice(at, at + 6), staff);
    assert.isAbove(
      lines.findIndex((line) => /^part:\s+Second guitar$/.test(line)),
      at,
    );
    await undoneOnce(document, lantern);
  });

  it('may be for another instrument', async () => {
    const { document } = await newTab(tune);
    const given = { newPart: 'Ukulele', instrument: 'ukulele', keep: 'sound' };
    const outcome = await run('pegbox.convertIntoNewPart', given);
    assert.isDefined(outcome?.report, outcome?.error);
    assert.match(document.getText(), /^instrument:\s+ukulele$/m);
  });
});

describe('what would leave out less, in the editor', () => {
  afterEach(closeTabs);

  it('is shown in the preview instead, when it is chosen', async () => {
    const { document } = await newTab(lantern);
    const outcome = await run('pegbox.convert', { tuning: 'standard', keep: 'sound', preview: true });
    assert.strictEqual(outcome?.report?.unplaced.length, 2);
    const { after } = await shownDiff();
    const first = after.getText();
    let done = false;
    const fitted = Promise.resolve(run('pegbox.makeItFit', after.uri)).finally(() => (done = true));
    await waitFor(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return done;
    }, 'end of the question');
    const { report, error } = (await fitted) ?? {};
    assert.isBelow(report?.unplaced.length ?? NaN, 2, error);
    await waitFor(() => after.getText() !== first, 'text after the other change');
    const expected = after.getText();
    await run('pegbox.takeAll', after.uri);
    assert.strictEqual(document.getText(), expected);
    await undoneOnce(document, lantern);
  });

  it('is not there when every note has a place', async () => {
    await newTab(tune);
    await run('pegbox.convert', { tuning: 'DADGAD', keep: 'sound', preview: true });
    const { after } = await shownDiff();
    const outcome = await run('pegbox.makeItFit', after.uri);
    assert.match(outcome?.error ?? '', /no other request/);
  });
});

describe('the tuning that suits, in the editor', () => {
  afterEach(closeTabs);

  const ask = (given: object): Thenable<SuitResult | ServiceError | undefined> =>
    vscode.commands.executeCommand('pegbox.suit', given);

  it('is found for a passage, with the named tunings and the best of the retunings', async () => {
    await newTab(lantern);
    const found = await ask({ within: 1 });
    assert.ok(found !== undefined && !('error' in found), JSON.stringify(found));
    const [best] = found.best;
    assert.isAtMost(best?.cost ?? NaN, found.here?.cost ?? NaN);
    assert.include(
      found.named.map(({ name }) => name),
      'DADGAD',
    );
    assert.strictEqual(found.evaluated + found.unplayable + found.ruledOut, found.total);
  });

  it('is looked for while hovers are answered, and ends without an answer when it is called off', async () => {
    const { document } = await newTab(lantern);
    const long = await newTab(ferry);
    await vscode.commands.executeCommand('notifications.clearAll');
    let over = false;
    const searched = { within: 3, anyKey: true, uri: long.document.uri.toString() };
    const found = Promise.resolve(ask(searched)).finally(() => (over = true));
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      new vscode.Position(8, 8),
    );
    assert.isNotEmpty(hovers);
    assert.isFalse(over, 'the search was over before the hover was there');
    // The only notification is that of the search, its only button the one that calls it off.
    await waitFor(async () => {
      await vscode.commands.executeCommand('notification.acceptPrimaryAction');
      return Promise.race([
        found.then(() => true),
        new Promise<false>((no) => setTimeout(() => no(false), 400)),
      ]);
    }, 'end of the search');
    // A search that had gone on to its end would have found something.
    assert.isUndefined(await found);
    // The server is free for the next one, which nobody calls off.
    const next = await ask({ within: 1, uri: document.uri.toString() });
    assert.ok(next !== undefined && !('error' in next), JSON.stringify(next));
  });

  it('is told in a sentence when there is none to be found', async () => {
    await newTab('title:  Empty Slip\n');
    const found = await ask({ within: 1 });
    assert.match(found && 'error' in found ? found.error : '', /^There is no tab/);
  });

  it('is chosen from a list, which ends in the preview of a conversion', async () => {
    const { document } = await newTab(lantern);
    let outcome: { readonly preview?: string } | undefined;
    let done = false;
    void Promise.resolve(
      vscode.commands.executeCommand<typeof outcome>('pegbox.suit', {
        range: new vscode.Range(5, 0, 10, 20),
      }),
    ).then((answer) => {
      outcome = answer;
      done = true;
    });
    await waitFor(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return done;
    }, 'end of the questions');
    assert.isDefined(outcome?.preview);
    const { after } = await shownDiff();
    assert.match(after.getText(), /^tuning:\s+(?!DADGAD)/m);
    assert.strictEqual(document.getText(), lantern);
  });
});

describe('the table of the hand in the editor', () => {
  afterEach(closeTabs);

  it('is a page with every constant, its value, unit and reason', async () => {
    await vscode.commands.executeCommand('pegbox.showHandTable');
    const input = await waitFor(() => {
      const active = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
      return active instanceof vscode.TabInputCustom && active;
    }, 'page');
    const text = (await vscode.workspace.openTextDocument(input.uri)).getText();
    const rows = text.split('\n').filter((line) => line.startsWith('| '));
    for (const [name, { value, unit }] of Object.entries(HAND_CONSTANTS)) {
      const row = rows.find((line) => line.includes(`| ${name} |`));
      assert.include(row, `| ${name} | ${value} | ${unit} |`);
    }
    assert.isFalse(vscode.workspace.fs.isWritableFileSystem(input.uri.scheme));
  });
});
