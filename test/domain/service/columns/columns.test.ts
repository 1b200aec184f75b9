import { expect } from 'chai';
import fc from 'fast-check';
import { applyEdits } from '../../../../src/cli/applyEdits';
import type { ColumnsRequest } from '../../../../src/service/columns/columnsRequest';
import { randomPiece } from '../../support/randomPiece';
import { service, settings } from '../cursor';

type Asked = Omit<ColumnsRequest, 'range'>;

/** The text after an action, or the sentence that refuses it. */
function after(text: string, line: number, character: number, asked: Asked): string {
  const place = { line, character };
  const document = service.open(text, settings);
  const answer = service.columns(document, { ...asked, range: { start: place, end: place } }, settings);
  return 'error' in answer ? answer.error : applyEdits(text, answer.edits);
}

const sound = (text: string): string =>
  service
    .notes(service.open(text, settings))
    .map(({ name, string, onset }) => `${name} ${string} ${JSON.stringify(onset)}`)
    .join('\n');

const TAB = [
  'tuning: D A D',
  '',
  '3 |0---2---|----3---|',
  '2 |0-------|0-------|',
  '1 |--------|--------|',
  '',
];
const REPEAT = TAB.join('\n').replace(/^(\d) \|(.*)\|(.*)\|$/gm, '$1 |:$2|$3:|');

describe('column tools', () => {
  it('double a bar, and take in what is asked for only', () => {
    const doubled = after(TAB.join('\n'), 2, 5, { action: 'duplicateBars' });
    expect(doubled.split('\n')[2]).to.equal('3 |0---2---|0---2---|----3---|');
    expect(after(doubled, 2, 5, { action: 'removeBars' })).to.equal(
      'Bar 1 has 3 notes: clear it first, or take the notes out as well.',
    );
    expect(after(doubled, 2, 5, { action: 'removeBars', withNotes: true })).to.equal(TAB.join('\n'));
  });

  it('keep a repeat whole around what is doubled or taken out', () => {
    expect(after(REPEAT, 2, 15, { action: 'duplicateBars' }).split('\n')[2]).to.equal(
      '3 |:0---2---|----3---|----3---:|',
    );
    expect(after(REPEAT, 2, 15, { action: 'removeBars', withNotes: true }).split('\n')[2]).to.equal(
      '3 |:0---2---:|',
    );
  });

  it('mean the bar at the cursor, also where a remark has all of them played again', () => {
    const thrice = TAB.join('\n').replace('3---|', '3---| x3');
    expect(after(thrice, 2, 15, { action: 'insertBar' }).split('\n')[2]).to.equal(
      '3 |0---2---|--------|----3---| x3',
    );
    expect(after(thrice, 2, 15, { action: 'removeBars', withNotes: true }).split('\n')[2]).to.equal(
      '3 |0---2---| x3',
    );
    expect(after(thrice, 2, 15, { action: 'splitSystem' })).to.match(/^“x3” says how often/);
  });

  it('never lose a word that stands over a bar sign', () => {
    const text = ['tuning: D A D', '', 'words |        oh       |', ...TAB.slice(2)]
      .join('\n')
      .replace(/^(\d) \|/gm, '$1     |');
    expect(after(text, 3, 20, { action: 'insertBar' }).split('\n')[2]).to.equal(
      'words |        |        oh       |',
    );
    expect(after(text, 3, 20, { action: 'splitSystem' })).to.equal(
      'Something in the row “words” stands over a bar sign, so the bars cannot be taken apart there: move it into its bar.',
    );
  });

  it('keep the ends of lines', () => {
    const text = TAB.join('\r\n');
    const split = after(text, 2, 15, { action: 'splitSystem' });
    expect(after(split, 2, 5, { action: 'joinSystems' })).to.equal(text);
  });

  it('refuse where there are no bars', () => {
    expect(after('title: Low Tide\n', 0, 0, { action: 'insertBeat' })).to.match(/^There are no bars here/);
  });

  it('split, join, fit and double without a change of sound', function () {
    this.timeout(60_000);
    let made = 0;
    fc.assert(
      fc.property(randomPiece(), fc.nat(), (text, seed) => {
        const { systems } = service.open(text, settings);
        const system = systems[seed % systems.length];
        if (!system) return;
        const line = system.firstLine + system.lines.findIndex(({ kind }) => kind === 'string');
        const own = service.open(text, settings).line(line).text;
        const character = seed % 2 === 0 ? own.indexOf('|') + 1 : own.length - 2;
        const changed = (from: string, asked: Asked): string | undefined => {
          const place = { line, character };
          const answer = service.columns(
            service.open(from, settings),
            { ...asked, range: { start: place, end: place } },
            settings,
          );
          if ('error' in answer) return undefined;
          made += 1;
          return applyEdits(from, answer.edits);
        };
        for (const asked of [
          { action: 'splitSystem' },
          { action: 'joinSystems' },
          { action: 'fitWidth', width: 60 },
          { action: 'insertColumn' },
        ] satisfies Asked[]) {
          const now = changed(text, asked);
          if (now !== undefined) expect(sound(now), asked.action).to.equal(sound(text));
        }
        const twice = changed(text, { action: 'duplicateBars' });
        const again =
          twice === undefined ? undefined : changed(twice, { action: 'removeBars', withNotes: true });
        if (again !== undefined) expect(sound(again)).to.equal(sound(text));
      }),
      { numRuns: 60 },
    );
    expect(made).to.be.greaterThan(60);
  });
});
